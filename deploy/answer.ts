import type { IncomingMessage } from 'node:http';
import type { Readable } from 'node:stream';

/** What a request is answered with. */
export interface Answer {
  readonly status: number;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer | Readable;
}

/** A request that is refused, with a sentence for the person who has to put it right. */
export class Refusal extends Error {
  readonly status: number;

  constructor(status: number, sentence: string) {
    super(sentence);
    this.status = status;
  }
}

export function json(value: unknown, status = 200): Answer {
  return { status, headers: { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' }, body: JSON.stringify(value) };
}

/** @throws Refusal 413 when the body is longer than `limitBytes` */
export async function readBytes(request: IncomingMessage, limitBytes: number): Promise<Buffer> {
  const tooLong = () => new Refusal(413, `That is too long: at most ${Math.floor(limitBytes / 1024)} KB are taken at once.`);
  if (Number(request.headers['content-length'] ?? 0) > limitBytes) throw tooLong();
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length > limitBytes) throw tooLong();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

/**
 * Reads a request's body as UTF-8.
 * @throws Refusal 413 when it is longer than `limitBytes`, 400 when it is not UTF-8
 */
export async function readBody(request: IncomingMessage, limitBytes: number): Promise<string> {
  const bytes = await readBytes(request, limitBytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(400, 'The text sent is not UTF-8.');
  }
}

/** @throws Refusal 400 when the body is not JSON, and as {@link readBody} */
export async function readJson(request: IncomingMessage, limitBytes: number): Promise<unknown> {
  const text = await readBody(request, limitBytes);
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    throw new Refusal(400, `The text sent is not JSON: ${(error as Error).message}.`);
  }
}
