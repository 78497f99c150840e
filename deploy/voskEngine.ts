import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { build } from 'esbuild';
import type { Plugin } from 'esbuild';

const PACKAGE_FOLDER = dirname(createRequire(import.meta.url).resolve('@lichess-org/vosk-browser'));
const ENDS_AT = 'var vosk_default = LoadVosk;';

/** The compiled engine, to be served beside the worker. */
export const VOSK_WASM = join(PACKAGE_FOLDER, 'vosk.wasm');

/**
 * Makes `import startVosk from 'vosk-engine'` mean the engine alone: the package's worker file without the package's own message handling, which
 * keeps models in the browser's database, writes every block of sound out as JSON, and cannot be told to stop.
 */
export const voskEngine: Plugin = {
  name: 'vosk-engine',
  setup(builder) {
    builder.onResolve({ filter: /^vosk-engine$/ }, () => ({ path: join(PACKAGE_FOLDER, 'vosk.worker.js'), namespace: 'vosk-engine' }));
    builder.onLoad({ filter: /.*/, namespace: 'vosk-engine' }, ({ path }) => ({ contents: engineAlone(readFileSync(path, 'utf8')), loader: 'js' }));
  },
};

/** @throws {Error} when the package is not built as expected (another version: look at it before trusting it) */
function engineAlone(workerSource: string): string {
  const end = workerSource.indexOf(ENDS_AT);
  if (end < 0) throw new Error(`@lichess-org/vosk-browser: the line "${ENDS_AT}" was not found in its vosk.worker.js; is it another version?`);
  return `${workerSource.slice(0, end)}export default LoadVosk;`;
}

/** Bundles the ear's two stand-alone scripts, recogniser-worker.js and capture-worklet.js, into a folder. */
export async function buildEarScripts(folder: string): Promise<void> {
  const root = join(import.meta.dirname, '..', 'kiosk', 'ear');
  await build({
    entryPoints: [join(root, 'recogniser-worker.ts'), join(root, 'capture-worklet.ts')],
    outdir: folder, bundle: true, format: 'esm', target: 'es2022', minify: true, legalComments: 'none', plugins: [voskEngine],
  });
}
