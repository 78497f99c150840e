import type { IncomingMessage } from 'node:http';
import type { JournalRecord } from '../core/journal/entry.ts';
import { readRecord } from '../core/journal/record.ts';
import { json, readBody, readBytes, readJson, Refusal, type Answer } from './answer.ts';
import type { AirSensors } from './airSensors.ts';
import { checkedName, listFiles, readNamed, saveNew, type Folders } from './folders.ts';
import type { Heartbeat } from './heartbeat.ts';
import type { Keeper } from './keeper.ts';
import { readClock } from './machineClock.ts';
import { BUILT_IN, listModels } from './model/listing.ts';
import type { ModelShelf } from './model/shelf.ts';
import { fileAnswer } from './staticFiles.ts';

/** What the server's addresses under /api/ stand on. */
export interface Shop {
  /** The keeper, or why there is none. */
  readonly keeper: Keeper | string;
  readonly heartbeat: Heartbeat;
  readonly folders: Folders;
  readonly models: ModelShelf;
  readonly air: AirSensors;
  /** The built page. */
  readonly site: string;
}

const MOST_RECORDS_BYTES = 32 * 1024 * 1024;
const MOST_FILE_BYTES = 64 * 1024 * 1024;
/** Pieces, and tables of boards. */
const PIECE_ENDINGS = ['.json', '.csv'];
const SHEET_ENDINGS = ['.pdf'];

type Handler = (shop: Shop, request: IncomingMessage, url: URL, name: string) => Promise<Answer>;

/** Method and path → what answers it. A path may end in one name, `*`. */
const ROUTES: ReadonlyMap<string, Handler> = new Map<string, Handler>([
  ['GET /api/keeper', (shop) => Promise.resolve(json(keeperOf(shop).status))],
  ['GET /api/keeper/records', async (shop, _request, url) => ({
    status: 200,
    headers: { 'content-type': 'application/x-ndjson; charset=utf-8', 'cache-control': 'no-store' },
    body: await keeperOf(shop).linesAfter(wholeNumber(url.searchParams.get('after') ?? '0', 'after')),
  })],
  ['POST /api/keeper/records', async (shop, request) => json(await keeperOf(shop).append(readRecords(await readJson(request, MOST_RECORDS_BYTES))))],
  ['POST /api/keeper/set-aside', async (shop, request) => {
    const { after, lastNumber, lastChecksum } = fields(await readJson(request, 1024));
    return json(await keeperOf(shop).setAsideAfter(wholeNumber(after, 'after'), { lastNumber: wholeNumber(lastNumber, 'lastNumber'), lastChecksum: String(lastChecksum) }));
  }],
  ['GET /api/clock', (shop) => Promise.resolve(json({ ...readClock(undefined, trustedWallMs(shop.heartbeat)), seenBefore: shop.heartbeat.before ?? null }))],
  ['POST /api/heartbeat', async (shop) => {
    const { wallMs, wallTrusted, bootId, monotonicMs } = readClock(undefined, trustedWallMs(shop.heartbeat));
    const now = { wallMs, wallTrusted, bootId, monotonicMs };
    await shop.heartbeat.beat(now);
    return json(now);
  }],
  ['GET /api/pieces', async (shop) => json({ folder: shop.folders.pieces, files: await listFiles(shop.folders.pieces, PIECE_ENDINGS) })],
  ['GET /api/pieces/*', async (shop, _request, _url, name) => ({
    status: 200,
    headers: { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' },
    body: await readNamed(shop.folders.pieces, checkedName(name, PIECE_ENDINGS), MOST_FILE_BYTES),
  })],
  ['PUT /api/pieces/*', async (shop, request, _url, name) => {
    // Sheets of paper are kept beside the pieces, where the maker looks for what is theirs.
    const checked = checkedName(name, [...PIECE_ENDINGS, ...SHEET_ENDINGS]);
    const content = SHEET_ENDINGS.some((ending) => checked.endsWith(ending)) ? await readBytes(request, MOST_FILE_BYTES) : await readBody(request, MOST_FILE_BYTES);
    const given = await saveNew(shop.folders.pieces, checked, content);
    return json({ name: given, folder: shop.folders.pieces }, 201);
  }],
  // With the machine's time, so that the age of a reading can be told whatever the page's clock says.
  ['GET /api/air', async (shop) => json({ nowMs: Date.now(), sensors: await shop.air.read() })],
  ['GET /api/models', async (shop) => {
    const files = await listModels(shop.models);
    const unchecked = files.some(({ state }) => state === 'not checked yet');
    if (unchecked) void shop.models.checkNew().catch(() => undefined);
    return json({ folder: shop.folders.models, checking: unchecked, files });
  }],
  ['POST /api/models/chosen', async (shop, request) => {
    const { name } = fields(await readJson(request, 1024));
    if (typeof name !== 'string') throw new Refusal(400, 'The name of a model was expected under "name".');
    if (!(await shop.models.choose(name === BUILT_IN ? null : name))) throw new Refusal(409, `There is no model "${name}" that can be used.`);
    return json({ name });
  }],
  ['GET /api/models/*', async (shop, request, _url, name) => {
    const packed = (await shop.models.list()).find((model) => model.name === name)?.packed;
    const answer = packed === undefined ? undefined : await fileAnswer(packed, 'application/gzip', request.headers['if-none-match']);
    if (!answer) throw new Refusal(404, `There is no model "${name}" that can be used in ${shop.folders.models}.`);
    return answer;
  }],
]);

/** @throws Refusal when there is no such address, or what was sent cannot be taken */
export async function answerApi(shop: Shop, request: IncomingMessage, url: URL, path: string): Promise<Answer> {
  const method = request.method === 'HEAD' ? 'GET' : request.method ?? '';
  const exact = ROUTES.get(`${method} ${path}`);
  if (exact) return exact(shop, request, url, '');
  const cut = path.lastIndexOf('/');
  const named = ROUTES.get(`${method} ${path.slice(0, cut)}/*`);
  if (!named) throw new Refusal(404, `There is nothing at ${method} ${path}.`);
  return named(shop, request, url, path.slice(cut + 1));
}

function keeperOf({ keeper }: Shop): Keeper {
  if (typeof keeper === 'string') throw new Refusal(503, keeper);
  return keeper;
}

function readRecords(value: unknown): readonly JournalRecord[] {
  const { records } = fields(value);
  if (!Array.isArray(records)) throw new Refusal(400, 'A list of records was expected under "records".');
  return records.map((candidate, index) => {
    const read = readRecord(candidate);
    if (!read.ok) throw new Refusal(400, `Record ${index + 1} of those sent cannot be taken: ${read.fault.message}`);
    return read.value;
  });
}

function fields(value: unknown): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new Refusal(400, 'An object was expected.');
  return value as Readonly<Record<string, unknown>>;
}

function wholeNumber(value: unknown, name: string): number {
  const number = typeof value === 'string' && /^\d{1,15}$/.test(value) ? Number(value) : value;
  if (typeof number !== 'number' || !Number.isSafeInteger(number) || number < 0) throw new Refusal(400, `"${name}" must be a whole number, 0 or more.`);
  return number;
}

/** Only a time that was believed then can show that the clock has gone back since. */
function trustedWallMs(heartbeat: Heartbeat): number {
  return heartbeat.latest?.wallTrusted ? heartbeat.latest.wallMs : 0;
}
