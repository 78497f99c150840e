import type { JournalRecord } from '../../core/journal/entry.ts';
import { CopyFault, type Copy, type End } from './copy.ts';

const DEADLINE_MS = 8_000;
/** Records sent at once when catching up. */
const MOST_AT_ONCE = 2_000;

export interface KeeperCopy extends Copy {
  /** What happened to the file that the person should know, as of the last answer. */
  readonly told: readonly string[];
}

/** The journal in the keeper's file, by way of the local server. @param root where the server is; empty for the page's own origin */
export function keeperCopy(root = ''): KeeperCopy {
  let told: readonly string[] = [];

  async function ask(path: string, change?: unknown): Promise<Response> {
    const response = await fetch(`${root}/api/keeper${path}`, {
      cache: 'no-store',
      signal: AbortSignal.timeout(DEADLINE_MS),
      ...(change === undefined ? {} : { method: 'POST', headers: { 'content-type': 'application/json', 'x-benchcall': '1' }, body: JSON.stringify(change) }),
    }).catch(() => {
      throw new CopyFault('away', 'the bench\'s server does not answer');
    });
    if (!response.ok) throw await faultOf(response);
    return response;
  }

  async function status(response: Response): Promise<End> {
    const value = (await response.json().catch(() => ({}))) as Record<string, unknown>;
    if (typeof value['lastNumber'] !== 'number' || typeof value['lastChecksum'] !== 'string') throw new CopyFault('away', 'what answers is not the bench\'s server');
    told = Array.isArray(value['told']) ? value['told'].map(String) : [];
    return { lastNumber: value['lastNumber'], lastChecksum: value['lastChecksum'] };
  }

  return {
    place: 'the journal\'s file',
    get told() {
      return told;
    },
    end: async () => status(await ask('')),
    async readAfter(number) {
      const text = await (await ask(`/records?after=${number}`)).text().catch(() => {
        throw new CopyFault('away', 'the bench\'s server broke off while the journal was read');
      });
      return recordsIn(text).filter((record) => !(numberOf(record) <= number));
    },
    async append(records: readonly JournalRecord[]) {
      for (let from = 0; from < records.length; from += MOST_AT_ONCE) await status(await ask('/records', { records: records.slice(from, from + MOST_AT_ONCE) }));
    },
    async setAsideAfter(number, end) {
      await status(await ask('/set-aside', { after: number, ...end }));
    },
    close: () => undefined,
  };
}

/** The lines of the file, each a list of the records of one act; a line that cannot be read ends it. */
function recordsIn(text: string): unknown[] {
  const records: unknown[] = [];
  for (const line of text.split('\n')) {
    if (line === '') continue;
    try {
      records.push(...(JSON.parse(line) as unknown[]));
    } catch {
      break;
    }
  }
  return records;
}

function numberOf(record: unknown): number {
  return (record as { number?: number } | null)?.number ?? NaN;
}

async function faultOf(response: Response): Promise<CopyFault> {
  const { error } = (await response.json().catch(() => ({}))) as { error?: unknown };
  const sentence = (typeof error === 'string' ? error : `the bench's server answered ${response.status}`).replace(/\.$/, '');
  if (response.status === 409) return new CopyFault('conflict', sentence);
  if (response.status === 507) return new CopyFault('no space', sentence);
  return new CopyFault('broken', sentence);
}
