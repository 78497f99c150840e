import { createReadStream } from 'node:fs';
import { open, opendir, readFile, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Readable } from 'node:stream';
import { failure, success, type Result } from '../../core/result.ts';
import { BrokenArchive, Limits, unpackTar, unpackTarGz, type PackedFile } from '../../kiosk/ear/unpack.ts';
import { archiveFault, GET_ANOTHER, type Files, type ModelFault } from './fault.ts';
import { unzip } from './zip.ts';

/** What a file's first bytes tell of it (hexadecimal), and what becomes of it. */
const KINDS: readonly { readonly begins: string; readonly at?: number; readonly kind: 'zip' | 'tar.gz' | 'tar' | { readonly what: string; readonly todo: string } }[] = [
  { begins: '504b0304', kind: 'zip' },
  { begins: '504b0506', kind: { what: 'it is a zip without any file in it', todo: GET_ANOTHER } },
  { begins: '1f8b', kind: 'tar.gz' },
  { begins: '7573746172', at: 257, kind: 'tar' },
  ...[['425a68', 'bzip2'], ['fd377a585a00', 'xz'], ['377abcaf271c', '7z'], ['52617221', 'rar'], ['28b52ffd', 'zstd']].map(([begins = '', name = '']) => ({
    begins, kind: { what: `it is packed with ${name}, which is not read here`, todo: 'Unpack it, and give the folder, or pack that as .zip or .tar.gz.' },
  })),
  ...['3c21', '3c68', '3c48'].map((begins) => ({ begins, kind: { what: 'it is a web page, not an archive', todo: 'The download did not work: get the model itself.' } })),
];
const HEAD_BYTES = 512;
/** Beside the model's own files, what other systems leave in archives. */
const LITTER = /(^|\/)(__MACOSX\/|\.DS_Store$|Thumbs\.db$|desktop\.ini$)/;
const DEEPEST = 6;

/**
 * The files of a model, from an archive (.zip, .tar.gz, .tar) or a folder, below the folder that holds am/final.mdl.
 * Nothing is written anywhere. A file that no model has is left where it is: see keepKnown.
 */
export async function openModel(path: string): Promise<Result<Files, ModelFault>> {
  const where = basename(path);
  try {
    const found = await stat(path).catch(() => undefined);
    if (found === undefined) return failure({ where: path, what: 'there is no such file or folder', todo: 'Look at how it is written.' });
    const packed = found.isDirectory() ? filesOf(path) : await contentsOf(path);
    if ('what' in packed) return failure({ where, ...packed });
    const files = new Map<string, Uint8Array<ArrayBuffer>>();
    for await (const { path: name, bytes } of packed) {
      if (files.has(name)) throw new BrokenArchive(`it holds "${name}" twice`);
      if (!LITTER.test(name)) files.set(name, bytes);
    }
    return belowItsFolder(files, where);
  } catch (error) {
    return failure(archiveFault(where, error));
  }
}

async function contentsOf(file: string): Promise<AsyncGenerator<PackedFile> | { what: string; todo: string }> {
  const head = await headOf(file);
  if (head.length === 0) return { what: 'it is empty', todo: GET_ANOTHER };
  const { kind } = KINDS.find(({ begins, at = 0 }) => head.subarray(at, at + begins.length / 2).toString('hex') === begins) ?? { kind: undefined };
  switch (kind) {
    case undefined: return { what: 'it is neither a .zip nor a .tar.gz', todo: 'Give a packed speech model, or its folder.' };
    case 'zip': return unzip(file);
    case 'tar.gz': return unpackTarGz(streamOf(file));
    case 'tar': return unpackTar(streamOf(file));
    default: return kind;
  }
}

async function headOf(file: string): Promise<Buffer> {
  const handle = await open(file, 'r');
  try {
    const head = Buffer.alloc(HEAD_BYTES);
    const { bytesRead } = await handle.read(head, 0, HEAD_BYTES, 0);
    return head.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function streamOf(file: string): ReadableStream<Uint8Array<ArrayBuffer>> {
  return Readable.toWeb(createReadStream(file)) as ReadableStream<Uint8Array<ArrayBuffer>>;
}

/** The files below a folder; links are refused, for what they lead to may be anything, and may be gone tomorrow. */
async function* filesOf(folder: string, inside = '', limits = new Limits(), depth = 0): AsyncGenerator<PackedFile> {
  if (depth > DEEPEST) throw new BrokenArchive(`"${inside}" lies deeper than any file of a model`);
  for await (const entry of await opendir(join(folder, inside))) {
    const path = inside === '' ? entry.name : `${inside}/${entry.name}`;
    if (entry.isSymbolicLink()) throw new BrokenArchive(`"${path}" is a link, and only files are taken: put what it leads to in its place`);
    if (entry.isDirectory()) yield* filesOf(folder, path, limits, depth + 1);
    else if (entry.isFile()) {
      limits.file(path, (await stat(join(folder, path))).size);
      yield { path, bytes: Uint8Array.from(await readFile(join(folder, path))) };
    }
  }
}

/** A model is usually packed with a folder around it, whatever its name. */
function belowItsFolder(files: Files, where: string): Result<Files, ModelFault> {
  const networks = [...files.keys()].filter((path) => /(^|\/)am\/final\.mdl$/.test(path));
  const [network, second] = networks;
  if (second !== undefined) return failure({ where, what: `it holds several models (${networks.map((path) => `"${path}"`).join(', ')})`, todo: 'Give one of them.' });
  if (network === undefined) return failure({ where, ...withoutNetwork([...files.keys()]) });
  const top = network.slice(0, -'am/final.mdl'.length);
  return success(new Map([...files].filter(([path]) => path.startsWith(top)).map(([path, bytes]) => [path.slice(top.length), bytes])));
}

function withoutNetwork(paths: readonly string[]): { what: string; todo: string } {
  if (paths.length === 0) return { what: 'it holds no files', todo: GET_ANOTHER };
  if (paths.some((path) => /(^|\/)final\.mdl$/.test(path))) {
    return { what: 'its files lie side by side, as the oldest models have them, and not in am/, conf/ and graph/', todo: 'Take a newer model, with am/final.mdl and conf/model.conf.' };
  }
  const other = paths.find((path) => /\.(onnx|pt|bin|gguf|tflite|pbmm|scorer|safetensors)$/.test(path));
  return { what: `it has no am/final.mdl${other === undefined ? '' : `, but "${other}": it is a model for another engine`}`, todo: 'Give a Vosk model for run-time grammars (am/, conf/ and graph/ with Gr.fst and HCLr.fst).' };
}
