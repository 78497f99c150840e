import { ensureInstalled, runTypeScript } from './setUp.mjs';

// `npm start`: from a fresh clone to a bench on the screen.
ensureInstalled();
const built = runTypeScript('deploy/build.ts');
process.exit(built === 0 ? runTypeScript('deploy/serve.ts', ['--open']) : built);
