import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { JOURNAL_VERSION } from '../../core/journal/migrate.ts';
import { writeLines } from '../../deploy/keeperFile.ts';
import { journalFile } from '../../deploy/keeperForm.ts';
import { journal } from '../deploy/help.ts';
import { inWorkshop, look, openPage, startServerProcess, type Workshop } from '../keeping/bench.ts';
import type { PageDone } from '../keeping/page.ts';

/** How long an act takes until it is kept, and how long a journal takes to open, in the real browser and with the real server. */
const ACTS = 300;
const LENGTHS = [0, 1_000, 10_000];

async function keepSome(workshop: Workshop, address: string, query: string): Promise<void> {
  const page = openPage(address, `acts=${ACTS}&${query}`, join(workshop.folder, `profile-${query}`));
  const [, text = ''] = await page.line(/KEEPING done (.*?) END/, 120_000);
  await page.end();
  const { medianMs, ms95, longestMs } = JSON.parse(text) as PageDone;
  console.log(`${ACTS} acts kept in ${query === '' ? 'both copies' : 'the browser alone'}: median ${medianMs.toFixed(1)} ms, 95 % within ${ms95.toFixed(1)} ms, longest ${longestMs.toFixed(1)} ms`);
}

async function openLong(workshop: Workshop, acts: number): Promise<void> {
  const [profile, data] = [join(workshop.folder, `profile-${acts}`), join(workshop.folder, `data-${acts}`)];
  const records = journal(acts);
  await mkdir(join(data, 'journal'), { recursive: true });
  await writeFile(join(data, 'journal', journalFile(JOURNAL_VERSION)), writeLines(records).text);
  const server = await startServerProcess(workshop, data);
  const first = await look(server.address, profile);
  const again = await look(server.address, profile);
  await server.end();
  console.log(`a journal of ${records.length} entries: opened and folded in ${again.openMs} ms (${first.openMs} ms into an empty browser), script heap ${again.heapMb} MB`);
}

void inWorkshop(async (workshop) => {
  const server = await startServerProcess(workshop, join(workshop.folder, 'data'));
  await keepSome(workshop, server.address, '');
  await keepSome(workshop, server.address, 'alone');
  await server.end();
  for (const acts of LENGTHS) await openLong(workshop, acts);
});
