import { createReadStream, existsSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname } from 'node:path';
import { findChromium } from '../../deploy/chromium.mjs';
import { securityHeaders } from '../../deploy/headers.ts';

const TYPES: Readonly<Record<string, string>> = { '.js': 'text/javascript', '.wasm': 'application/wasm', '.html': 'text/html', '.wav': 'audio/wav' };

/** Serves these files (path → file) on this machine, each under the policy that the kiosk's server gives it. */
export async function serveFiles(files: ReadonlyMap<string, string>): Promise<{ address: string; close: () => void }> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://127.0.0.1').pathname;
    const file = files.get(path);
    if (file === undefined || !existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { ...securityHeaders(path), 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server has no port');
  return { address: `http://127.0.0.1:${address.port}/`, close: () => { server.closeAllConnections(); server.close(); } };
}

/** @throws Error that says how to name one */
export function chromiumPath(): string {
  const path = findChromium();
  if (path === undefined) throw new Error('no Chromium: name one with CHROMIUM=/path/to/chromium');
  return path;
}
