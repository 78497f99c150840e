import { build, type BuildOptions, type Metafile } from 'esbuild';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { COPIES, PAGE_BUNDLES, WORKER_BUNDLES, type Bundle } from './assets.ts';
import { voskEngine } from './voskEngine.ts';

/** What the page may load before its first screen is drawn and its keys work, gzipped, without the recogniser and the voice. */
export const PAGE_BUDGET_BYTES = 170 * 1024;

export interface ScriptSize {
  /** Path under dist/. */
  readonly file: string;
  readonly bytes: number;
  readonly gzipBytes: number;
  /** `first` is loaded before anything is drawn, `later` while the first screen is drawn already; recogniser, voice and planner are weighed apart. */
  readonly when: 'first' | 'later' | 'apart';
}

export interface BuildReport {
  readonly out: string;
  readonly scripts: readonly ScriptSize[];
  /** Of the first load. */
  readonly pageGzipBytes: number;
  /** Of what follows it. */
  readonly laterGzipBytes: number;
}

const REPOSITORY = resolve(import.meta.dirname, '..');

/** A digest of all that core is made of: a fold that was kept by other code is then not used again. */
function coreDigest(): string {
  const digest = createHash('sha256');
  const core = join(REPOSITORY, 'core');
  for (const file of readdirSync(core, { recursive: true, encoding: 'utf8' }).filter((name) => /\.(ts|json)$/.test(name)).sort()) digest.update(file).update(readFileSync(join(core, file)));
  return digest.digest('hex').slice(0, 16);
}

/** What every bundle has in common; tests bundle their own pages with it. */
export const BUNDLING: BuildOptions = {
  bundle: true,
  format: 'esm',
  target: 'es2022',
  minify: true,
  sourcemap: 'linked',
  legalComments: 'eof',
  logLevel: 'warning',
  absWorkingDir: REPOSITORY,
  tsconfig: join(REPOSITORY, 'tsconfig.json'),
  plugins: [voskEngine],
  define: { CORE_DIGEST: JSON.stringify(coreDigest()) },
};

/**
 * Builds the whole kiosk into `out`. The new folder is made beside it and moved into place when it is complete, so a
 * server that is running, or a failed build, never shows a half of it.
 * @throws Error naming each file of assets.ts that is not there
 */
export async function buildKiosk(out: string): Promise<BuildReport> {
  refuseMissing([...PAGE_BUNDLES, ...WORKER_BUNDLES, ...COPIES]);
  const fresh = `${out}.new-${process.pid}`;
  rmSync(fresh, { recursive: true, force: true });
  mkdirSync(fresh, { recursive: true });
  try {
    const [page] = await Promise.all([
      build({ ...BUNDLING, entryPoints: entryPoints(PAGE_BUNDLES), outdir: fresh, splitting: true, chunkNames: 'app-[hash]', metafile: true }),
      ...WORKER_BUNDLES.map((bundle) => build({ ...BUNDLING, entryPoints: entryPoints([bundle]), outdir: fresh })),
    ]);
    for (const copy of COPIES) cpSync(join(REPOSITORY, copy.from), join(fresh, copy.to), { recursive: true, preserveTimestamps: true, filter: (file) => !file.endsWith('.ts') });
    swap(fresh, out);
    return report(out, firstLoad(page.metafile, relative(REPOSITORY, fresh)));
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
}

function refuseMissing(parts: readonly Bundle[]): void {
  const missing = parts.filter((part) => !existsSync(join(REPOSITORY, part.from)));
  if (missing.length > 0) throw new Error(`deploy/assets.ts names what is not there: ${missing.map((part) => part.from).join(', ')}`);
}

function entryPoints(bundles: readonly Bundle[]): { in: string; out: string }[] {
  return bundles.map((bundle) => ({ in: bundle.from, out: bundle.to.replace(/\.js$/, '') }));
}

function swap(fresh: string, out: string): void {
  const old = `${out}.old-${process.pid}`;
  mkdirSync(dirname(out), { recursive: true });
  if (existsSync(out)) renameSync(out, old);
  renameSync(fresh, out);
  rmSync(old, { recursive: true, force: true });
}

/** The scripts that a browser fetches for the page before it runs: its entry, and all that this imports outright. */
function firstLoad({ outputs }: Metafile, folder: string): ReadonlySet<string> {
  const first = new Set(PAGE_BUNDLES.map(({ to }) => `${folder}/${to}`));
  for (const script of first) for (const { path, kind } of outputs[script]?.imports ?? []) if (kind === 'import-statement') first.add(path);
  return new Set([...first].map((script) => relative(folder, script)));
}

function report(out: string, first: ReadonlySet<string>): BuildReport {
  const scripts = readdirSync(out, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.js'))
    .sort()
    .map((file): ScriptSize => {
      const content = readFileSync(join(out, file));
      return { file, bytes: content.length, gzipBytes: gzipSync(content, { level: 9 }).length, when: first.has(file) ? 'first' : /^(ear|mouth|stock)[\\/]/.test(file) ? 'apart' : 'later' };
    });
  const weight = (when: ScriptSize['when']) => scripts.filter((script) => script.when === when).reduce((sum, script) => sum + script.gzipBytes, 0);
  return { out, scripts, pageGzipBytes: weight('first'), laterGzipBytes: weight('later') };
}

/** The report as lines for a terminal. */
export function describeBuild(result: BuildReport): string {
  const kilobytes = (bytes: number) => `${(bytes / 1024).toFixed(1)} KB`.padStart(10);
  const lines = result.scripts.map((script) => `${kilobytes(script.bytes)} ${kilobytes(script.gzipBytes)} gzip  ${script.when.padEnd(5)}  ${script.file}`);
  return [...lines, `The page: ${kilobytes(result.pageGzipBytes).trim()} gzip of ${kilobytes(PAGE_BUDGET_BYTES).trim()} first, ${kilobytes(result.laterGzipBytes).trim()} later; built into ${relative(process.cwd(), result.out) || '.'}`].join('\n');
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const words = process.argv.slice(2);
  const out = words.find((word) => !word.startsWith('--')) ?? join(REPOSITORY, 'dist');
  const result = await buildKiosk(resolve(out));
  console.log(describeBuild(result));
  if (words.includes('--check') && result.pageGzipBytes > PAGE_BUDGET_BYTES) {
    console.error('The page weighs more than its budget.');
    process.exitCode = 1;
  }
}
