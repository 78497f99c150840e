import { openAsBlob } from 'node:fs';
import type { Bench } from '../../core/bench/bench.ts';
import { dependsOn } from '../../core/talk/dependence.ts';
import { phrasesFor } from '../../core/talk/grammar.ts';
import { wordsIn } from '../../core/talk/strict/expression.ts';
import { sentencesFor } from '../../core/talk/strict/sentences.ts';
import { Attention } from '../../kiosk/ear/attention.ts';
import type { Noticed } from '../../kiosk/ear/attention.ts';
import { Gain } from '../../kiosk/ear/gain.ts';
import { Gate } from '../../kiosk/ear/gate.ts';
import { asMeant, makeGrammar, wordsToAsk } from '../../kiosk/ear/grammar.ts';
import type { Engine, EngineRecognizer } from '../../kiosk/ear/engine.ts';
import type { ModelFiles } from '../../kiosk/ear/graph/graphFiles.ts';
import { SAMPLE_RATE_HZ } from '../../kiosk/ear/messages.ts';
import { Steady } from '../../kiosk/ear/steady.ts';
import { StandsOut } from '../../kiosk/ear/standsOut.ts';
import { trustSettingsAt, trustedWords } from '../../kiosk/ear/trust.ts';
import type { DependsOn } from '../../kiosk/ear/trust.ts';
import { unpackTarGz } from '../../kiosk/ear/unpack.ts';
import { openVocabulary } from '../../kiosk/ear/vocabulary.ts';
import type { Vocabulary } from '../../kiosk/ear/vocabulary.ts';
import { engineInNode } from '../../deploy/model/engineInNode.ts';
import { SHIPPED_MODEL, shippedDictionary } from './models.ts';

/** What the ear made of sound, and when, in milliseconds of sound since the ear was made. */
interface Note {
  readonly atMs: number;
  readonly noticed: Noticed;
  /** Words of it that were not heard clearly. */
  readonly doubtful: readonly string[];
}

const BLOCK = SAMPLE_RATE_HZ / 10;

/** The engine with the model that ships; takes a second. */
export class NodeEngine {
  readonly engine: Engine;
  readonly #vocabulary: Vocabulary;

  private constructor(engine: Engine, vocabulary: Vocabulary) {
    this.engine = engine;
    this.#vocabulary = vocabulary;
  }

  static async start(): Promise<NodeEngine> {
    const { engine, printed } = await engineInNode();
    return new NodeEngine(engine, openVocabulary(engine, await shippedModel(), shippedDictionary(), printed));
  }

  /** An ear that listens for these phrases; free it with `end()`. */
  ear(phrases: readonly string[], addressWord: string): EarInNode {
    const { unknown } = this.#vocabulary.learn(wordsToAsk(phrases, addressWord));
    const grammar = makeGrammar(phrases, addressWord, new Set(unknown));
    const recogniser = new this.engine.Recognizer(this.#vocabulary.model, SAMPLE_RATE_HZ, JSON.stringify(grammar.phrases));
    return new EarInNode(this.engine, recogniser, { addressWord, meant: grammar.meant });
  }

  /** An ear that listens by sentences to what this bench understands now, as the kiosk's does; end the one before first. */
  earOf(bench: Bench): EarInNode {
    const { addressWord } = bench.state.settings;
    const sentences = sentencesFor(bench);
    const phrases = phrasesFor(bench);
    const { unknown } = this.#vocabulary.learn([...new Set([...wordsToAsk(phrases, addressWord), ...wordsIn(sentences)])]);
    if (this.#vocabulary.follow === undefined) throw new Error('the model that ships cannot listen by sentences');
    this.#vocabulary.follow(sentences, addressWord);
    const recogniser = new this.engine.Recognizer(this.#vocabulary.model, SAMPLE_RATE_HZ);
    recogniser.SetWords(true);
    return new EarInNode(this.engine, recogniser, { addressWord, meant: makeGrammar(phrases, addressWord, new Set(unknown)).meant, trusts: (words, at) => dependsOn(words, at, bench) });
  }
}

interface Listening {
  readonly addressWord: string;
  readonly meant: ReadonlyMap<string, string>;
  /** With it, only what is heard surely is taken for said. */
  readonly trusts?: DependsOn;
}

/**
 * The ear as kiosk/ear/ear.ts and its worker join it (gate, gain, engine, attention), but in the time of the sound itself: minutes are heard in seconds, and attention
 * lasts as long as it would at the bench.
 */
export class EarInNode {
  readonly #engine: Engine;
  readonly #recogniser: EngineRecognizer;
  readonly #gate = new Gate();
  readonly #gain = new Gain();
  readonly #standsOut = new StandsOut();
  readonly #steady = new Steady();
  readonly #attention: Attention;
  readonly #listening: Listening;
  readonly #buffer: number;
  #lastGuess = '';
  #heardMs = 0;
  /** Of the sound so far, what the gate let through. */
  passedMs = 0;
  notes: Note[] = [];
  /** All words that came out of the engine, whoever they were meant for. */
  words: { readonly atMs: number; readonly text: string }[] = [];

  constructor(engine: Engine, recogniser: EngineRecognizer, listening: Listening) {
    this.#engine = engine;
    this.#recogniser = recogniser;
    this.#attention = new Attention(listening.addressWord);
    this.#listening = listening;
    this.#buffer = engine._malloc(BLOCK * Float32Array.BYTES_PER_ELEMENT);
  }

  get heardMs(): number {
    return this.#heardMs;
  }

  /** Attention as after the listen key. */
  listenNow(): void {
    this.#attention.listen(this.#heardMs);
  }

  leave(): void {
    this.#attention.leave();
  }

  /** Hears 16 kHz sound; what is less than a tenth of a second at the end is left out. */
  hear(sound: Float32Array): void {
    for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) this.#take(Float32Array.from(sound.subarray(at, at + BLOCK)));
  }

  end(): void {
    this.#engine._free(this.#buffer);
    this.#recogniser.delete();
  }

  #take(block: Float32Array<ArrayBuffer>): void {
    this.#heardMs += 100;
    this.#steady.take(block);
    const { blocks, ended } = this.#gate.take(block);
    if (blocks.length === 0) return;
    for (const passed of blocks) this.#standsOut.take(passed);
    for (const passed of this.#gain.apply(blocks, this.#gate.floorDb)) this.#decode(passed);
    if (!ended) return;
    this.#gain.reset();
    this.#said(this.#recogniser.FinalResult());
    this.#standsOut.reset();
    this.#attention.fellQuiet();
  }

  #decode(block: Float32Array): void {
    this.passedMs += block.length / 16;
    // The engine reckons with samples as a sound card counts them.
    this.#engine.HEAPF32.set(block.map((sample) => sample * 32_768), this.#buffer / Float32Array.BYTES_PER_ELEMENT);
    if (this.#recogniser.AcceptWaveform(this.#buffer, block.length)) this.#said(this.#recogniser.Result());
    else this.#guessed(this.#recogniser.PartialResult());
  }

  #guessed(json: string): void {
    const { partial = '' } = JSON.parse(json) as { partial?: string };
    if (partial === '' || partial === this.#lastGuess) return;
    this.#lastGuess = partial;
    this.#note(this.#attention.guess(partial, this.#heardMs));
  }

  #said(json: string): void {
    this.#lastGuess = '';
    const { text = '', result = [] } = JSON.parse(json) as { text?: string; result?: readonly { readonly conf: number }[] };
    if (text === '') return;
    this.words.push({ atMs: this.#heardMs, text });
    const { addressWord, meant, trusts } = this.#listening;
    const heard = asMeant(text, meant);
    const { words, doubtful } = trusts === undefined ? { words: heard, doubtful: [] } : trustedWords(heard, result.map(({ conf }) => conf), addressWord, trusts, trustSettingsAt(this.#standsOut.db));
    this.#note(this.#attention.words(words, this.#heardMs), doubtful);
  }

  #note(noticed: Noticed | undefined, doubtful: readonly string[] = []): void {
    if (noticed !== undefined) this.notes.push({ atMs: this.#heardMs, noticed, doubtful });
  }
}

async function shippedModel(): Promise<ModelFiles> {
  const found = new Map<string, Uint8Array<ArrayBuffer>>();
  for await (const { path, bytes } of unpackTarGz((await openAsBlob(SHIPPED_MODEL)).stream())) found.set(path.replace(/^[^/]*\//, ''), bytes);
  return found;
}
