import { request } from 'node:http';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { createConnection } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { JOURNAL_VERSION } from '../../core/journal/migrate.ts';
import { journalFile } from '../../deploy/keeperForm.ts';
import { AlreadyRunning, startServer, type BenchServer } from '../../deploy/server.ts';
import { inFolder, journal } from './help.ts';

interface Answered {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

interface Asked {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

/** A request as bare as it is written: nothing is added, and the path is sent as it stands. */
function ask(server: BenchServer, path: string, { method = 'GET', headers = {}, body }: Asked = {}): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const sent = request({ port: Number(new URL(server.address).port), host: '127.0.0.1', path, method, headers }, (answer) => {
      const chunks: Buffer[] = [];
      answer.on('data', (chunk: Buffer) => chunks.push(chunk));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(chunks).toString('utf8') }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

const changing = (server: BenchServer, body: unknown, more: Record<string, string> = {}): Asked => ({
  method: 'POST', body: typeof body === 'string' ? body : JSON.stringify(body), headers: { origin: server.address, 'x-benchcall': '1', ...more },
});

/** A server on a site of a few files, with everything in one folder. */
async function serving(work: (server: BenchServer, folder: string) => Promise<void>): Promise<void> {
  await inFolder(async (folder) => {
    const site = join(folder, 'site');
    await mkdir(join(site, 'ear'), { recursive: true });
    await mkdir(join(site, 'mouth'));
    await writeFile(join(site, 'index.html'), '<!doctype html><title>bench</title>');
    await writeFile(join(site, 'ear', 'recogniser-worker.js'), 'onmessage = null;');
    await writeFile(join(site, 'mouth', 'voice-worker.js'), 'onmessage = null;');
    await writeFile(join(folder, 'secret.json'), '{"secret":true}');
    const server = await startServer({ site, port: 0, folders: foldersIn(folder), keeper: { reserveBytes: 0 } });
    try {
      await work(server, folder);
    } finally {
      await server.close();
    }
  });
}

const foldersIn = (folder: string) => ({ journal: join(folder, 'journal'), pieces: join(folder, 'pieces'), models: join(folder, 'models') });

describe('what the server lets in', () => {
  it('answers on the loopback address alone, under its own name alone', () => serving(async (server) => {
    expect((await ask(server, '/')).status).toBe(200);
    for (const host of ['evil.example', `evil.example:${new URL(server.address).port}`, '127.0.0.1', '127.0.0.1:1']) {
      expect((await ask(server, '/', { headers: { host } })).status, host).toBe(403);
    }
  }));

  it('sends who comes to localhost to the one address, so that the browser keeps one journal', () => serving(async (server) => {
    const answer = await ask(server, '/', { headers: { host: `localhost:${new URL(server.address).port}` } });
    expect([answer.status, answer.headers['location']]).toEqual([307, `${server.address}/`]);
  }));

  it('refuses other origins, other sites, and changes that lack the header or the origin', () => serving(async (server) => {
    const change = { records: [] };
    expect((await ask(server, '/api/keeper/records', changing(server, change))).status).toBe(200);
    expect((await ask(server, '/api/keeper', { headers: { origin: 'http://evil.example' } })).status).toBe(403);
    expect((await ask(server, '/api/keeper', { headers: { 'sec-fetch-site': 'cross-site' } })).status).toBe(403);
    expect((await ask(server, '/', { headers: { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' } })).status).toBe(200);
    expect((await ask(server, '/api/keeper/records', changing(server, change, { origin: 'null' }))).status).toBe(403);
    expect((await ask(server, '/api/keeper/records', { method: 'POST', body: '{}', headers: { 'x-benchcall': '1' } })).status).toBe(403);
    expect((await ask(server, '/api/keeper/records', { method: 'POST', body: '{}', headers: { origin: server.address } })).status).toBe(403);
  }));

  it.each(['DELETE', 'PATCH', 'OPTIONS', 'TRACE'])('does not know the method %s', (method) => serving(async (server) => {
    expect((await ask(server, '/', { method })).status).toBe(405);
  }));

  it.each([
    '/../secret.json', '/%2e%2e/secret.json', '/..%2fsecret.json', '/ear/../../secret.json', '/.hidden', '//secret.json', '/ear', '/%00', '/%ff',
    '/api/pieces/..%2fsecret.json', '/api/pieces/%2e%2e%2fsecret.json', '/api/models/..%2f..%2fsecret.json', '/api/pieces/.secret.json', '/api/nothing', '/api/',
  ])('has nothing to give at %s', (path) => serving(async (server) => {
    const answer = await ask(server, path);
    expect([400, 404]).toContain(answer.status);
    expect(answer.body).not.toContain('secret":true');
  }));

  it('caps what it takes in, whether or not the length is said beforehand', () => serving(async (server) => {
    const long = `{"after":0,"x":"${'x'.repeat(5000)}"}`;
    expect((await ask(server, '/api/keeper/set-aside', changing(server, long))).status).toBe(413);
    expect((await ask(server, '/api/keeper/set-aside', changing(server, long, { 'transfer-encoding': 'chunked' }))).status).toBe(413);
  }));

  it.each([
    ['not JSON', '{', 400], ['no list', '{}', 400], ['a list of nothing', '{"records":[null]}', 400], ['a forged record', JSON.stringify({ records: [{ ...journal(1)[0], checksum: '00000000' }] }), 400],
  ])('refuses records that are %s, and says why', (_name, body, status) => serving(async (server) => {
    const answer = await ask(server, '/api/keeper/records', changing(server, body));
    expect(answer.status).toBe(status);
    expect((JSON.parse(answer.body) as { error: string }).error).toMatch(/\w{3}.*\.?$/);
  }));

  it('outlives bytes that are no request at all', () => serving(async (server) => {
    await new Promise<void>((resolve) => {
      const socket = createConnection({ port: Number(new URL(server.address).port), host: '127.0.0.1' }, () => socket.end('\0\x01 rubbish\r\n\r\n'));
      socket.resume();
      socket.on('close', () => resolve());
      socket.on('error', () => resolve());
    });
    expect((await ask(server, '/')).status).toBe(200);
  }));
});

describe('the headers', () => {
  // The page's policy as OWASP ASVS 5.0 (V3.4.3, V3.4.4, V3.4.5, V3.4.6, V3.4.8) asks for: an allow-list, no objects, no base, no frames, no sniffing.
  it('give the page a policy without eval, without inline script, and with Trusted Types', () => serving(async (server) => {
    const { headers } = await ask(server, '/');
    const policy = String(headers['content-security-policy']);
    for (const part of ["default-src 'none'", "script-src 'self'", "style-src 'self'", "img-src 'self' data:", "font-src 'self'", "connect-src 'self'", "worker-src 'self'", "media-src 'self' blob:", "base-uri 'none'", "object-src 'none'", "frame-ancestors 'none'", "form-action 'none'", "require-trusted-types-for 'script'"]) {
      expect(policy.split('; ')).toContain(part);
    }
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'cross-origin-opener-policy': 'same-origin' });
    expect(headers['permissions-policy']).toContain('microphone=(self)');
  }));

  it('give each worker the one thing more that it needs, and nobody else', () => serving(async (server) => {
    expect((await ask(server, '/ear/recogniser-worker.js')).headers['content-security-policy']).toBe("default-src 'none'; script-src 'self' 'unsafe-eval'; connect-src 'self'");
    expect((await ask(server, '/mouth/voice-worker.js')).headers['content-security-policy']).toBe("default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'");
    for (const path of ['/api/keeper', '/nothing', '/api/clock']) expect((await ask(server, path)).headers['content-security-policy'], path).not.toContain('unsafe');
  }));

  it('let the browser keep a file until it changes', () => serving(async (server, folder) => {
    const first = await ask(server, '/');
    const etag = String(first.headers['etag']);
    expect((await ask(server, '/', { headers: { 'if-none-match': etag } })).status).toBe(304);
    await writeFile(join(folder, 'site', 'index.html'), '<!doctype html><title>another build</title>');
    expect((await ask(server, '/', { headers: { 'if-none-match': etag } })).body).toContain('another build');
  }));
});

describe('what the server keeps', () => {
  it('adds records, tells where the journal ends, and gives the lines after a number', () => serving(async (server, folder) => {
    const records = journal(4);
    const answer = await ask(server, '/api/keeper/records', changing(server, { records }));
    expect(JSON.parse(answer.body)).toEqual({ lastNumber: 5, lastChecksum: records.at(-1)?.checksum, told: [] });
    expect(await readFile(join(folder, 'journal', journalFile(JOURNAL_VERSION)), 'utf8')).toContain('the 4th measurement');
    const lines = (await ask(server, '/api/keeper/records?after=4')).body.trimEnd().split('\n');
    expect(lines.flatMap((line) => JSON.parse(line) as unknown[])).toEqual(records.slice(4));
    expect((await ask(server, '/api/keeper/records?after=-1')).status).toBe(400);
    expect((await ask(server, '/api/keeper/records', changing(server, { records: journal(9).slice(8) }))).status).toBe(409);
  }));

  it('lists, reads and saves piece files, and never writes over one', () => serving(async (server, folder) => {
    expect(JSON.parse((await ask(server, '/api/pieces')).body)).toEqual({ folder: join(folder, 'pieces'), files: [] });
    const put = (name: string, body: string) => ask(server, `/api/pieces/${encodeURIComponent(name)}`, { ...changing(server, body), method: 'PUT' });
    expect(JSON.parse((await put('work table.json', '{"a":1}')).body)).toMatchObject({ name: 'work table.json' });
    expect(JSON.parse((await put('work table.json', '{"a":2}')).body)).toMatchObject({ name: 'work table 2.json' });
    expect((await ask(server, '/api/pieces/work%20table.json')).body).toBe('{"a":1}');
    expect((await ask(server, '/api/pieces/work%20table%202.json')).body).toBe('{"a":2}');
    expect((await put('run me.sh', 'x')).status).toBe(400);
    expect((await put('../out.json', 'x')).status).not.toBe(201);
    expect(await readdir(join(folder, 'pieces'))).toEqual(['work table 2.json', 'work table.json']);
    const { files } = JSON.parse((await ask(server, '/api/pieces')).body) as { files: { name: string; bytes: number }[] };
    expect(files.map(({ name, bytes }) => [name, bytes])).toEqual([['work table 2.json', 7], ['work table.json', 7]]);
    expect((await ask(server, '/api/pieces/none.json')).status).toBe(404);
  }));

  it('lists the model that ships and those of the maker\'s choice, and gives only what was found good', () => serving(async (server, folder) => {
    await mkdir(join(folder, 'models'));
    await mkdir(join(folder, 'site', 'models'));
    await writeFile(join(folder, 'models', 'large.tar.gz'), 'large');
    await writeFile(join(folder, 'models', 'notes.txt'), 'no model');
    await writeFile(join(folder, 'site', 'models', 'model.tar.gz'), 'first');
    const { files, checking } = JSON.parse((await ask(server, '/api/models')).body) as { files: { name: string; state: string; chosen: boolean }[]; checking: boolean };
    expect(files.map(({ name, state, chosen }) => [name, state, chosen])).toEqual([['built-in', 'good', true], ['large.tar.gz', 'not checked yet', false]]);
    expect(checking).toBe(true);
    expect((await ask(server, '/models/model.tar.gz')).status).toBe(200);
    expect((await ask(server, '/api/models/large.tar.gz')).status).toBe(404);
    const choose = (name: unknown) => ask(server, '/api/models/chosen', changing(server, { name }));
    expect((await choose('built-in')).status).toBe(200);
    const refused = await choose('large.tar.gz');
    expect([refused.status, refused.body]).toEqual([409, expect.stringContaining('no model \\"large.tar.gz\\" that can be used')]);
    expect((await choose(7)).status).toBe(400);
    expect((await ask(server, '/api/models/chosen', { method: 'POST', body: '{"name":"built-in"}' })).status).toBe(403);
  }));

  it('remembers over a restart when the bench was last alive', () => inFolder(async (folder) => {
    const start = () => startServer({ site: folder, port: 0, folders: foldersIn(folder), keeper: { reserveBytes: 0 } });
    const first = await start();
    expect(JSON.parse((await ask(first, '/api/clock')).body)).toMatchObject({ seenBefore: null });
    const beat = JSON.parse((await ask(first, '/api/heartbeat', changing(first, ''))).body) as object;
    await first.close();
    const second = await start();
    expect(JSON.parse((await ask(second, '/api/clock')).body)).toMatchObject({ seenBefore: beat });
    await second.close();
  }));

  it('lets no second server write the same journal, and says where the first one is', () => serving(async (server, folder) => {
    const second = startServer({ site: folder, port: 0, folders: foldersIn(folder) });
    await expect(second).rejects.toBeInstanceOf(AlreadyRunning);
    await expect(second).rejects.toMatchObject({ address: server.address });
  }));

  it('serves the page even where no file can be kept, and says why to whoever asks the keeper', () => inFolder(async (folder) => {
    await writeFile(join(folder, 'index.html'), '<!doctype html>');
    await writeFile(join(folder, 'journal'), 'a file where a folder should be');
    const server = await startServer({ site: folder, port: 0, folders: foldersIn(folder) });
    expect((await ask(server, '/')).status).toBe(200);
    const answer = await ask(server, '/api/keeper');
    expect([answer.status, (JSON.parse(answer.body) as { error: string }).error]).toEqual([503, expect.stringContaining('cannot be used')]);
    await server.close();
  }));
});
