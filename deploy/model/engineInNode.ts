import { build } from 'esbuild';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { voskEngine } from '../voskEngine.ts';
import { startEngine } from '../../kiosk/ear/engine.ts';
import type { Engine, Printed, StartEngine } from '../../kiosk/ear/engine.ts';

const WASM = join(import.meta.dirname, '..', '..', 'node_modules', '@lichess-org', 'vosk-browser', 'dist', 'vosk.wasm');

/** The speech engine without a browser, for measuring what needs no microphone. It believes that it runs in a worker, for it was built for nothing else. */
export async function engineInNode(): Promise<{ engine: Engine; printed: Printed }> {
  const folder = mkdtempSync(join(tmpdir(), 'engine-'));
  try {
    const outfile = join(folder, 'engine.mjs');
    await build({ stdin: { contents: "export { default } from 'vosk-engine';", resolveDir: folder }, plugins: [voskEngine], bundle: true, format: 'esm', outfile, logLevel: 'error' });
    Object.assign(globalThis, { self: globalThis, WorkerGlobalScope: Object, importScripts: () => undefined, location: { href: pathToFileURL(outfile).href } });
    const { default: start } = await import(pathToFileURL(outfile).href) as { default: (options: object) => ReturnType<StartEngine> };
    return await startEngine((options) => start({ ...options, wasmBinary: readFileSync(WASM) }), 'vosk.wasm');
  } finally {
    rmSync(folder, { recursive: true });
  }
}
