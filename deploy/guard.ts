import type { IncomingMessage } from 'node:http';
import { Refusal, type Answer } from './answer.ts';

/** Must stand on every request that changes something: a page of another origin cannot set it without being asked first. */
export const CHANGE_HEADER = 'x-benchcall';

const READING = ['GET', 'HEAD'];
const CHANGING = ['POST', 'PUT'];

/** Where a page asked for by this machine's usual name is to be found: under two names the browser would keep two journals. */
export function elsewhere(request: IncomingMessage, port: number): Answer | undefined {
  if (request.method !== 'GET' || request.url !== '/' || request.headers.host !== `localhost:${port}`) return undefined;
  return { status: 307, headers: { location: `http://127.0.0.1:${port}/` } };
}

/**
 * Lets through only what our own page (or a program on this machine that says the right things) asks for: the Host must be ours,
 * which defeats a foreign name pointed at this machine; a change needs our Origin and our header.
 * @throws Refusal
 */
export function guard(request: IncomingMessage, port: number): void {
  const method = request.method ?? '';
  if (!READING.includes(method) && !CHANGING.includes(method)) throw new Refusal(405, `The method ${method} is not used here.`);
  const ours = `http://127.0.0.1:${port}`;
  if (request.headers.host !== `127.0.0.1:${port}`) throw new Refusal(403, `Open the bench at ${ours}, not under another name.`);
  const { origin } = request.headers;
  if (origin !== undefined && origin !== ours) throw new Refusal(403, 'Another page may not ask this server.');
  const site = request.headers['sec-fetch-site'];
  if (site === 'cross-site' || site === 'same-site') refuseForeign(request);
  if (!CHANGING.includes(method)) return;
  if (origin !== ours) throw new Refusal(403, 'A change must come from the bench\'s own page.');
  if (request.headers[CHANGE_HEADER] === undefined) throw new Refusal(403, `A change must carry the header ${CHANGE_HEADER}.`);
}

/** A link from elsewhere may open the page itself; nothing else may be asked for from elsewhere. */
function refuseForeign(request: IncomingMessage): void {
  const opensPage = request.method === 'GET' && request.headers['sec-fetch-mode'] === 'navigate' && new URL(request.url ?? '/', 'http://x').pathname === '/';
  if (!opensPage) throw new Refusal(403, 'Another page may not ask this server.');
}
