import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { foldersFrom } from './folders.ts';
import { openBrowser } from './openBrowser.ts';
import { AlreadyRunning, startServer } from './server.ts';

/** Serves the built kiosk: `npm run serve`, and the end of `npm start`. With `--open`, opens it in a browser if there is a display. */
async function serve(words: readonly string[]): Promise<void> {
  const site = resolve(words.find((word) => !word.startsWith('--')) ?? join(import.meta.dirname, '..', 'dist'));
  if (!existsSync(join(site, 'index.html'))) throw new Error(`There is no built page in ${site}: run "npm run build" first.`);
  const server = await startServer({ site, folders: foldersFrom(process.env), ...wantedPort(process.env['PORT']), onFault: (error) => console.error(error) });
  console.log(`Benchcall is at ${server.address} (Ctrl+C to stop)`);
  for (const sentence of server.told()) console.log(sentence);
  if (words.includes('--open')) openBrowser(server.address, profileFolder());
  const stop = () => void server.close().then(() => process.exit(0));
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}

/** Beside the journal's folder. */
function profileFolder(): string {
  return join(dirname(foldersFrom(process.env).journal), 'browser');
}

function wantedPort(named: string | undefined): { port?: number } {
  if (named === undefined || named === '') return {};
  const port = Number(named);
  if (!Number.isInteger(port) || port < 0 || port > 65535) throw new Error(`PORT must be a whole number from 0 to 65535, not "${named}".`);
  return { port };
}

try {
  await serve(process.argv.slice(2));
} catch (error) {
  if (error instanceof AlreadyRunning) {
    console.log(error.message);
    if (process.argv.includes('--open') && error.address !== '') openBrowser(error.address, profileFolder());
  } else {
    console.error((error as NodeJS.ErrnoException).code === 'EADDRINUSE' ? `The port ${process.env['PORT'] ?? ''} is taken: name another with PORT, or none for the next free one.` : error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
