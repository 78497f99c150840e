import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'esbuild';

const PACKAGE_FOLDER = dirname(createRequire(import.meta.url).resolve('@lichess-org/vosk-browser'));
const ENDS_AT = 'var vosk_default = LoadVosk;';

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
