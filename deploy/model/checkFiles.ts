import { hasOurPhones } from '../../kiosk/ear/graph/layout.ts';
import { SAMPLE_RATE_HZ } from '../../kiosk/ear/messages.ts';
import { numberOf, readConf } from './conf.ts';
import { GET_ANOTHER, type Files, type ModelFault } from './fault.ts';
import { checkGraph, type Graph } from './checkGraph.ts';

/** What was found in a model's files before the engine saw them. */
export interface Findings {
  readonly faults: readonly ModelFault[];
  /** What its owner should know, and what was done about it. */
  readonly remarks: readonly string[];
  /** The files that the kiosk is given: those that the engine reads, and notices. */
  readonly kept: Files;
  /** Its own words; undefined when it has our sounds and is given whatever words there are. */
  readonly words: ReadonlySet<string> | undefined;
}

type Options = ReadonlyMap<string, string>;

const BEGINS_WITH = Uint8Array.from([0, ...new TextEncoder().encode('B<TransitionModel> ')]);
const IVECTOR_FILES = ['final.dubm', 'final.ie', 'final.mat', 'global_cmvn.stats', 'online_cmvn.conf', 'splice.conf'].map((name) => `ivector/${name}`);
const ENGINE_FILES = new Set([
  'am/final.mdl', 'am/global_cmvn.stats', 'conf/model.conf', 'conf/mfcc.conf', 'conf/pitch.conf', 'conf/online_cmvn.conf', ...IVECTOR_FILES, 'ivector/online_cmvn.stats',
]);
const NOTICE = /^(README|LICEN[CS]E|COPYING|NOTICE)[^/]*$/i;
const LONGEST_NOTICE_BYTES = 200_000;
/** Kaldi's defaults (feat/feature-mfcc.h, feat/feature-window.h). */
const DEFAULT_CEPSTRA = 13;
const PITCH_FIGURES = 3;

/** Looks at everything that can be seen without the engine; all faults at once. */
export function checkFiles(files: Files): Findings {
  const network = checkNetwork(files);
  const features = checkFeatures(files, network.input);
  const ours = hasOurPhones(files.get('am/final.mdl') ?? new Uint8Array(0));
  // Whether the model needs a graph of its own is not known of a network that cannot be read.
  const graph: Graph = ours || network.faults.length > 0 ? { faults: [], remarks: [], files: new Map(), words: undefined } : checkGraph(files);
  const ivectors = checkIvectors(files, network.ivectors);
  const kept = new Map([...files].filter(([path, bytes]) => ENGINE_FILES.has(path) || (NOTICE.test(path) && bytes.length <= LONGEST_NOTICE_BYTES)));
  if (!network.ivectors) for (const path of [...kept.keys()]) if (path.startsWith('ivector/')) kept.delete(path);
  return {
    faults: [...network.faults, ...features, ...graph.faults, ...ivectors, ...emptyFiles(files)],
    remarks: [...graph.remarks, ...leftOut(files)],
    kept: new Map([...kept, ...graph.files]), words: graph.words,
  };
}

interface Network { readonly faults: readonly ModelFault[]; readonly input: number | undefined; readonly ivectors: boolean }

/** am/final.mdl in Kaldi's binary form: transitions, then the lines that describe the network ("input-node name=input dim=40"). */
function checkNetwork(files: Files): Network {
  const where = 'am/final.mdl';
  const bytes = files.get(where) ?? new Uint8Array(0);
  const bad = (what: string, todo = GET_ANOTHER): Network => ({ faults: [{ where, what, todo }], input: undefined, ivectors: false });
  if (bytes.length === 0) return bad('it is empty');
  const begins = BEGINS_WITH.every((byte, at) => bytes[at] === byte);
  if (!begins) return bad('it does not begin as a Kaldi model in binary form does', 'Take a model for Vosk; a text form or another engine\'s model does not do.');
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (!text.includes('<Nnet3>')) return bad('it has no neural network of the kind "nnet3"', 'Take a newer model.');
  if (!text.includes('</Nnet3>')) return bad('its network is cut short');
  const input = nodeDimension(text, 'input');
  if (input === undefined) return bad('its network has no input');
  return { faults: [], input, ivectors: nodeDimension(text, 'ivector') !== undefined };
}

function nodeDimension(network: Buffer, name: string): number | undefined {
  const at = network.indexOf(`input-node name=${name} dim=`);
  const dimension = at < 0 ? null : /dim=(\d{1,5})/.exec(network.toString('latin1', at, at + 80));
  return dimension === null ? undefined : Number(dimension[1]);
}

/** The sound's features must be those that the network was trained with. */
function checkFeatures(files: Files, input: number | undefined): readonly ModelFault[] {
  const faults: ModelFault[] = [];
  const where = 'conf/mfcc.conf';
  const options = optionsOf(files, where, faults);
  optionsOf(files, 'conf/model.conf', faults);
  if (options === undefined) return faults;
  const bad = (what: string, todo: string) => faults.push({ where, what, todo });
  const rate = numberOf(options, 'sample-frequency', SAMPLE_RATE_HZ);
  if (rate !== SAMPLE_RATE_HZ) bad(`it wants sound of ${written(rate)} Hz, and the kiosk gives ${SAMPLE_RATE_HZ} Hz`, rate === 8_000 ? 'That is a model for telephones: take one for 16 kHz.' : 'Take a model for 16 kHz.');
  const high = numberOf(options, 'high-freq', 0);
  if (!(Math.abs(high) <= SAMPLE_RATE_HZ / 2)) bad(`its highest frequency, ${written(high)} Hz, is above half the sample rate`, GET_ANOTHER);
  const cepstra = numberOf(options, 'num-ceps', DEFAULT_CEPSTRA);
  const given = cepstra + (files.has('conf/pitch.conf') ? PITCH_FIGURES : 0);
  if (input !== undefined && given !== input) bad(`it makes ${written(given)} figures of each bit of sound, and the network in am/final.mdl takes ${input}`, 'These two files are not of the same model: get it again, whole.');
  return faults;
}

function optionsOf(files: Files, where: string, faults: ModelFault[]): Options | undefined {
  const bytes = files.get(where);
  if (bytes === undefined) {
    faults.push({ where, what: 'it is missing', todo: GET_ANOTHER });
    return undefined;
  }
  const options = readConf(bytes);
  if (options instanceof Map) return options as Options;
  const { line, text } = options as { line: number; text: string };
  faults.push({ where, what: `line ${line} is no option: "${text}"`, todo: 'Expected were lines of --name=value.' });
  return undefined;
}

function checkIvectors(files: Files, wanted: boolean): readonly ModelFault[] {
  const missing = wanted ? IVECTOR_FILES.filter((path) => !files.has(path)) : [];
  return missing.length === 0 ? [] : [{ where: 'ivector/', what: `the network wants to know the speaker, but ${missing.join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing`, todo: GET_ANOTHER }];
}

function emptyFiles(files: Files): readonly ModelFault[] {
  // A configuration without lines is whole: it takes all defaults.
  const empty = [...files].filter(([path, bytes]) => bytes.length === 0 && ENGINE_FILES.has(path) && path !== 'am/final.mdl' && !path.endsWith('.conf'));
  return empty.map(([path]) => ({ where: path, what: 'it is empty', todo: GET_ANOTHER }));
}

/** What the engine would pick up merely because it is there, and would do harm here. */
function leftOut(files: Files): readonly string[] {
  return ['rescore/', 'rnnlm/'].filter((folder) => [...files.keys()].some((path) => path.startsWith(folder)))
    .map((folder) => `${folder} is left out: it weighs whole sentences of its own, and the kiosk listens for those of the bench.`);
}

function written(number: number): string {
  return Number.isNaN(number) ? 'an unreadable number of' : String(number);
}
