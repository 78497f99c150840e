import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { Readable } from 'node:stream';
import { json, Refusal, type Answer } from './answer.ts';
import { answerApi, type Shop } from './api.ts';
import type { Folders } from './folders.ts';
import { elsewhere, guard } from './guard.ts';
import { securityHeaders } from './headers.ts';
import { openHeartbeat } from './heartbeat.ts';
import { Keeper, type KeeperOptions } from './keeper.ts';
import { takeLock, type Lock } from './lock.ts';
import { staticFile } from './staticFiles.ts';

export const DEFAULT_PORT = 4173;

export interface BenchServerOptions {
  /** The built page. */
  readonly site: string;
  readonly folders: Folders;
  /** Absent: the usual one, or the next that is free. 0: any. */
  readonly port?: number;
  readonly keeper?: KeeperOptions;
  /** Told of every fault that is the server's own. */
  readonly onFault?: (error: unknown) => void;
}

export interface BenchServer {
  readonly address: string;
  readonly keeper: Keeper;
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
 * Serves the page and keeps the journal's second copy, on this machine only.
 * @throws AlreadyRunning when another process keeps the same journal; Error when the wanted port is taken
 */
export async function startServer(options: BenchServerOptions): Promise<BenchServer> {
  await mkdir(options.folders.journal, { recursive: true });
  const taken = await takeLock(join(options.folders.journal, 'lock'));
  if ('heldBy' in taken) throw new AlreadyRunning(taken.heldBy.address, taken.heldBy.pid);
  try {
    const keeper = await Keeper.open(options.folders.journal, options.keeper);
    const shop: Shop = { keeper, heartbeat: await openHeartbeat(options.folders.journal), folders: options.folders, site: options.site };
    const server = createServer((request, response) => void respond(shop, request, response, options.onFault));
    server.requestTimeout = 30_000;
    const port = await listen(server, options.port);
    const address = `http://127.0.0.1:${port}`;
    await taken.lock.announce(address);
    return { address, keeper, close: () => shut(server, keeper, taken.lock) };
  } catch (error) {
    await taken.lock.release();
    throw error;
  }
}

async function shut(server: Server, keeper: Keeper, lock: Lock): Promise<void> {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  await keeper.close();
  await lock.release();
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
    const url = new URL(request.url ?? '/', 'http://127.0.0.1');
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
