import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { Readable } from 'node:stream';
import { AirSensors } from './airSensors.ts';
import { json, Refusal, type Answer } from './answer.ts';
import { answerApi, type Shop } from './api.ts';
import type { Folders } from './folders.ts';
import { elsewhere, guard } from './guard.ts';
import { securityHeaders } from './headers.ts';
import { openHeartbeat } from './heartbeat.ts';
import { Keeper, type KeeperOptions } from './keeper.ts';
import { takeLock, type Lock } from './lock.ts';
import { pieceOnBench } from './model/pieceOnBench.ts';
import { ModelShelf } from './model/shelf.ts';
import { staticFile } from './staticFiles.ts';

export const DEFAULT_PORT = 4173;

export interface BenchServerOptions {
  /** The built page. */
  readonly site: string;
  readonly folders: Folders;
  /** Absent: the usual one, or the next that is free. 0: any. */
  readonly port?: number;
  readonly keeper?: KeeperOptions;
  /** Where the kernel shows its sensors, for trying it out; else /sys. */
  readonly sysfs?: string;
  /** Told of every fault that is the server's own. */
  readonly onFault?: (error: unknown) => void;
}

export interface BenchServer {
  readonly address: string;
  /** What the person should know about the journal's file. */
  readonly told: () => readonly string[];
  close(): Promise<void>;
}

/** The bench is served already, by another process. */
export class AlreadyRunning extends Error {
  readonly address: string;

  constructor(address: string, pid: number) {
    super(`The bench is running already${address === '' ? '' : ` at ${address}`} (process ${pid}).`);
    this.address = address;
  }
}

/**
 * Serves the page and keeps the journal's second copy, on this machine only. Where no copy can be kept, the page is served all the same,
 * and told so.
 * @throws AlreadyRunning when another process keeps the same journal; Error when the wanted port is taken
 */
export async function startServer(options: BenchServerOptions): Promise<BenchServer> {
  const kept = await openKeeper(options);
  try {
    const { folders, site } = options;
    const models = new ModelShelf({ folder: folders.models, pieceTexts: () => pieceOnBench(folders.journal) });
    const shop: Shop = { keeper: kept.keeper, heartbeat: await openHeartbeat(folders.journal), folders, models, air: new AirSensors(options.sysfs), site };
    const server = createServer((request, response) => void respond(shop, request, response, options.onFault));
    server.requestTimeout = 30_000;
    const address = `http://127.0.0.1:${await listen(server, options.port)}`;
    await kept.lock?.announce(address);
    void models.checkNew().catch((error: unknown) => options.onFault?.(error));
    return {
      address,
      told: () => (typeof kept.keeper === 'string' ? [kept.keeper] : kept.keeper.status.told),
      close: () => {
        models.stop();
        return shut(server, kept);
      },
    };
  } catch (error) {
    await letGo(kept);
    throw error;
  }
}

/** A keeper with its lock, or why there is none. */
interface Kept {
  readonly keeper: Keeper | string;
  readonly lock?: Lock;
}

async function openKeeper({ folders, keeper }: BenchServerOptions): Promise<Kept> {
  let lock: Lock | undefined;
  try {
    await mkdir(folders.journal, { recursive: true });
    const taken = await takeLock(join(folders.journal, 'lock'));
    if ('heldBy' in taken) throw new AlreadyRunning(taken.heldBy.address, taken.heldBy.pid);
    lock = taken.lock;
    return { keeper: await Keeper.open(folders.journal, keeper), lock };
  } catch (error) {
    await lock?.release();
    if (error instanceof AlreadyRunning) throw error;
    return { keeper: `The journal's file in ${folders.journal} cannot be used: ${(error as Error).message}` };
  }
}

async function letGo({ keeper, lock }: Kept): Promise<void> {
  if (typeof keeper !== 'string') await keeper.close();
  await lock?.release();
}

async function shut(server: Server, kept: Kept): Promise<void> {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  await letGo(kept);
}

async function listen(server: Server, wanted: number | undefined): Promise<number> {
  const last = wanted ?? DEFAULT_PORT + 20;
  for (let port = wanted ?? DEFAULT_PORT; ; port += 1) {
    try {
      return await listenOn(server, port);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE' || port >= last) throw error;
    }
  }
}

function listenOn(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve(portOf(server));
    });
  });
}

function portOf(server: Server): number {
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server has no port');
  return address.port;
}

async function respond(shop: Shop, request: IncomingMessage, response: ServerResponse, onFault?: (error: unknown) => void): Promise<void> {
  let path = '/';
  let answer: Answer;
  try {
    const port = request.socket.localPort ?? 0;
    const moved = elsewhere(request, port);
    if (!moved) guard(request, port);
    const url = addressOf(request);
    path = decode(url.pathname);
    answer = moved ?? (path.startsWith('/api/') ? await answerApi(shop, request, url, path) : await answerFile(shop, request, path));
  } catch (error) {
    answer = faultAnswer(error, onFault);
  }
  await send(response, request, answer, path).catch((error: unknown) => {
    response.destroy();
    if ((error as NodeJS.ErrnoException).code !== 'ERR_STREAM_PREMATURE_CLOSE') onFault?.(error);
  });
}

/** Glued together rather than resolved, so that '//name' is a path here and not another host. */
function addressOf(request: IncomingMessage): URL {
  const url = `http://127.0.0.1${request.url ?? '/'}`;
  if (!URL.canParse(url) || new URL(url).host !== '127.0.0.1') throw new Refusal(400, 'The address cannot be read.');
  return new URL(url);
}

function decode(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    throw new Refusal(400, 'The address cannot be read.');
  }
}

async function answerFile(shop: Shop, request: IncomingMessage, path: string): Promise<Answer> {
  if (request.method !== 'GET' && request.method !== 'HEAD') throw new Refusal(405, 'Files are only read here.');
  const answer = await staticFile(shop.site, path, request.headers['if-none-match']);
  if (!answer) throw new Refusal(404, `There is nothing at ${path}.`);
  return answer;
}

function faultAnswer(error: unknown, onFault?: (error: unknown) => void): Answer {
  if (error instanceof Refusal) return json({ error: error.message }, error.status);
  onFault?.(error);
  return json({ error: `The server failed: ${error instanceof Error ? error.message : String(error)}.` }, 500);
}

async function send(response: ServerResponse, request: IncomingMessage, answer: Answer, path: string): Promise<void> {
  response.writeHead(answer.status, { ...securityHeaders(path), ...answer.headers });
  const { body } = answer;
  const stream = body !== undefined && typeof body !== 'string' && !Buffer.isBuffer(body) ? body satisfies Readable : undefined;
  if (request.method === 'HEAD') {
    stream?.destroy();
    response.end();
  } else if (stream) {
    await pipeline(stream, response);
  } else {
    response.end(body);
  }
}
