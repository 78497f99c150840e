import { openAsBlob } from 'node:fs';
import { wordsIn } from '../../../core/talk/strict/expression.ts';
import type { Expression } from '../../../core/talk/strict/expression.ts';
import type { Engine, EngineRecognizer, Printed } from '../../../kiosk/ear/engine.ts';
import { makeGrammar } from '../../../kiosk/ear/grammar.ts';
import { unpackTarGz } from '../../../kiosk/ear/unpack.ts';
import { StandsOut } from '../../../kiosk/ear/standsOut.ts';
import { openVocabulary } from '../../../kiosk/ear/vocabulary.ts';
import type { Vocabulary } from '../../../kiosk/ear/vocabulary.ts';
import { shippedDictionary } from '../../voice/models.ts';
import { RATE_HZ } from '../../voice/sound.ts';

const BLOCK = 1_600;
export const ADDRESS = 'bench';

/** One utterance, how sure the engine was of each word, and how far the voice stood out. */
export interface Heard { readonly words: string; readonly sureness: readonly number[]; readonly standsOutDb: number | undefined }

/** The kiosk's recogniser as its worker has it, in Node: the same engine, graph and grammar, without a browser around them. */
export class Listener {
  readonly #engine: Engine;
  readonly #vocabulary: Vocabulary;
  readonly #buffer: number;
  #recogniser: EngineRecognizer | undefined;
  readonly #standsOut = new StandsOut();
  /** What the hearing took of the processor, and how much was heard, in seconds. */
  tookSeconds = 0;
  heardSeconds = 0;

  private constructor(engine: Engine, vocabulary: Vocabulary) {
    this.#engine = engine;
    this.#vocabulary = vocabulary;
    this.#buffer = engine._malloc(BLOCK * Float32Array.BYTES_PER_ELEMENT);
  }

  static async open(modelFile: string, { engine, printed }: { engine: Engine; printed: Printed }): Promise<Listener> {
    const packed = new Map<string, Uint8Array<ArrayBuffer>>();
    for await (const { path, bytes } of unpackTarGz((await openAsBlob(modelFile)).stream())) packed.set(path.replace(/^[^/]*\//, ''), bytes);
    return new Listener(engine, openVocabulary(engine, packed, shippedDictionary(), printed));
  }

  /** Listens for these sentences; a model that cannot do that, for the phrases. */
  listenFor(sentences: Expression, phrases: readonly string[]): void {
    const { unknown } = this.#vocabulary.learn([...new Set([ADDRESS, ...wordsIn(sentences), ...phrases.flatMap((phrase) => phrase.split(' '))])]);
    this.#recogniser?.delete();
    this.#vocabulary.follow?.(sentences, ADDRESS);
    const grammar = this.#vocabulary.follow ? [] as const : [JSON.stringify(makeGrammar(phrases, ADDRESS, new Set(unknown)).phrases)] as const;
    this.#recogniser = new this.#engine.Recognizer(this.#vocabulary.model, RATE_HZ, ...grammar);
    this.#recogniser.SetWords(true);
  }

  /** Listens to a whole recording. */
  hear(sound: Float32Array): readonly Heard[] {
    const heard = Array.from({ length: Math.ceil(sound.length / BLOCK) }, (_, index) => this.take(sound.subarray(index * BLOCK, (index + 1) * BLOCK)));
    return [...heard, this.finish()].filter((each) => each !== undefined);
  }

  /** A block of at most a tenth of a second; what was said, if that was its end. */
  take(block: Float32Array): Heard | undefined {
    const recogniser = this.#recogniser;
    if (recogniser === undefined) throw new Error('nothing is listened for yet');
    this.#standsOut.take(block);
    const before = process.cpuUsage();
    const at = this.#buffer / Float32Array.BYTES_PER_ELEMENT;
    for (let index = 0; index < block.length; index += 1) this.#engine.HEAPF32[at + index] = (block[index] ?? 0) * 32_768;
    const heard = recogniser.AcceptWaveform(this.#buffer, block.length) ? this.#heardIn(recogniser.Result()) : undefined;
    this.#count(before, block.length);
    return heard;
  }

  finish(): Heard | undefined {
    const before = process.cpuUsage();
    const heard = this.#heardIn(this.#recogniser?.FinalResult() ?? '{}');
    this.#standsOut.reset();
    this.#count(before, 0);
    return heard;
  }

  #count(before: NodeJS.CpuUsage, samples: number): void {
    this.tookSeconds += process.cpuUsage(before).user / 1e6;
    this.heardSeconds += samples / RATE_HZ;
  }

  #heardIn(json: string): Heard | undefined {
    const { text = '', result = [] } = JSON.parse(json) as { text?: string; result?: readonly { readonly conf: number }[] };
    return text === '' ? undefined : { words: text, sureness: result.map(({ conf }) => conf), standsOutDb: this.#standsOut.db };
  }
}
