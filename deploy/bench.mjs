import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, ROOT, runTypeScript } from './setUp.mjs';

// `npm run bench -- NAME` measures one thing and prints the figures; without a name, the names.
const [name, ...words] = process.argv.slice(2);
const folder = join(ROOT, 'test', 'bench');
const names = existsSync(folder) ? readdirSync(folder).filter((file) => file.endsWith('.ts')).map((file) => file.slice(0, -3)) : [];

if (name !== undefined && names.includes(name)) {
  ensureInstalled();
  process.exit(runTypeScript(`test/bench/${name}.ts`, words));
}
if (name !== undefined) console.error(`There is no benchmark "${name}".`);
console.log(names.length === 0 ? 'There are no benchmarks yet.' : `npm run bench -- NAME, where NAME is one of: ${names.join(', ')}`);
process.exit(name === undefined ? 0 : 1);
