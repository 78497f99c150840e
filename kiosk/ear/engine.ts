import type { ModelFiles } from './graph/graphFiles.ts';
import { unpackTarGz, BrokenArchive } from './unpack.ts';
import type { LoadFault } from './messages.ts';

/** What we use of the speech engine (Vosk, compiled to WebAssembly by Emscripten with embind). */
export interface Engine {
  readonly HEAPF32: Float32Array;
  readonly HEAPU8: Uint8Array;
  readonly FS: {
    mkdirTree(path: string): void;
    writeFile(path: string, bytes: Uint8Array, options: { canOwn: boolean }): void;
    unlink(path: string): void;
  };
  readonly Model: new (path: string) => EngineModel;
  readonly Recognizer: new (model: EngineModel, sampleRateHz: number, ...grammarJson: readonly [string] | readonly []) => EngineRecognizer;
  SetLogLevel(level: number): void;
  _malloc(bytes: number): number;
  _free(address: number): void;
}
export interface EngineModel { delete(): void }
export interface EngineRecognizer {
  /** True when the engine hears that the speaker has ended. */
  AcceptWaveform(address: number, samples: number): boolean;
  /** Each result tells how sure it is of each word. */
  SetWords(on: boolean): void;
  PartialResult(): string;
  Result(): string;
  FinalResult(): string;
  delete(): void;
}
/** Emscripten's factory. */
export type StartEngine = (options: {
  locateFile: () => string; print: (line: string) => void; printErr: (line: string) => void;
}) => Promise<Engine>;

export class LoadError extends Error {
  readonly fault: LoadFault;

  constructor(fault: LoadFault, message: string) {
    super(message);
    this.fault = fault;
  }
}

/** What the engine prints is all that it says about its own faults. */
export interface Printed {
  lastLine: string;
  /** The last line that it called an error. */
  lastError: string;
}

/** Says what Vosk calls fatal, and nothing else. */
const ERRORS_ONLY = -1;
const MODEL_FOLDER = '/model';
/** Without these it is no model. */
const NEEDED = ['am/final.mdl', 'conf/model.conf'];

/** @throws {LoadError} 'engine failed', with the last line that the engine printed */
export async function startEngine(start: StartEngine, engineUrl: string): Promise<{ engine: Engine; printed: Printed }> {
  const printed: Printed = { lastLine: '', lastError: '' };
  const note = (line: string) => {
    printed.lastLine = line;
    if (line.startsWith('ERROR')) printed.lastError = line;
  };
  try {
    const engine = await start({ locateFile: () => engineUrl, print: note, printErr: note });
    engine.SetLogLevel(ERRORS_ONLY);
    return { engine, printed };
  } catch (error) {
    throw new LoadError('engine failed', describe(error, printed.lastLine));
  }
}

/**
 * Fetches a Vosk model and unpacks it, in memory (never into the browser's database, which the maker's work lives in).
 * @throws {LoadError} 'no model' when it cannot be fetched, 'broken model' when it is not a whole Vosk model
 */
export async function fetchModel(modelUrl: string): Promise<ModelFiles> {
  const packed = await fetchPacked(modelUrl);
  const files = new Map<string, Uint8Array<ArrayBuffer>>();
  try {
    for await (const file of unpackTarGz(packed)) files.set(file.path, file.bytes);
  } catch (error) {
    if (error instanceof BrokenArchive) throw new LoadError('broken model', error.message);
    throw new LoadError('no model', describe(error, ''));
  }
  const inside = withoutTopFolder(files);
  mustHave(inside, NEEDED);
  return inside;
}

/** @throws {LoadError} 'broken model', with the files that are missing */
export function mustHave(files: ModelFiles, paths: readonly string[]): void {
  const missing = paths.filter((path) => !files.has(path));
  if (missing.length > 0) throw new LoadError('broken model', `it lacks ${missing.join(', ')}`);
}

async function fetchPacked(url: string): Promise<ReadableStream<Uint8Array<ArrayBuffer>>> {
  let response: Response;
  try {
    // A replaced model must be heard at the next start, not when a cache runs out.
    response = await fetch(url, { cache: 'no-cache' });
  } catch (error) {
    throw new LoadError('no model', describe(error, ''));
  }
  if (!response.ok || response.body === null) throw new LoadError('no model', `the kiosk's server answered ${response.status}`);
  return response.body;
}

/** A model is packed with one folder around it, whatever its name. */
function withoutTopFolder(files: ReadonlyMap<string, Uint8Array<ArrayBuffer>>): Map<string, Uint8Array<ArrayBuffer>> {
  if (files.has('am/final.mdl')) return new Map(files);
  return new Map([...files].map(([path, bytes]) => [path.replace(/^[^/]*\//, ''), bytes]));
}

/**
 * Gives the engine a model's files and lets it load them. Once loaded, they are let go: the engine keeps its own copy.
 * @throws {LoadError} 'broken model', with what the engine said of it
 */
export function buildModel(engine: Engine, files: ModelFiles, printed: Printed): EngineModel {
  for (const [path, bytes] of files) {
    const full = `${MODEL_FOLDER}/${path}`;
    engine.FS.mkdirTree(full.slice(0, full.lastIndexOf('/')));
    engine.FS.writeFile(full, bytes, { canOwn: true });
  }
  printed.lastError = '';
  try {
    const model = new engine.Model(MODEL_FOLDER);
    // A damaged graph is only complained of: the engine would go on without it, and fail or hear nonsense later.
    if (printed.lastError !== '') throw new Error(printed.lastError);
    return model;
  } catch (error) {
    throw new LoadError('broken model', describe(error, printed.lastLine));
  } finally {
    for (const path of files.keys()) engine.FS.unlink(`${MODEL_FOLDER}/${path}`);
  }
}

/** graph/words.txt: a word and its number on each line; <eps>, #0 and the like are not words. */
export function readWords(bytes: Uint8Array): Set<string> {
  const lines = new TextDecoder().decode(bytes).split('\n');
  return new Set(lines.map((line) => line.split(/\s/, 1)[0] ?? '').filter((word) => word !== '' && !/^[<#]/.test(word)));
}

/** The engine throws bare numbers (addresses of C++ exceptions); then its last printed line is all that is known. */
export function describe(error: unknown, lastLine: string): string {
  const own = error instanceof Error ? error.message : `the engine gave up (${String(error)})`;
  return lastLine === '' || lastLine === own ? own : `${own}: ${lastLine}`;
}
