import type { Bench } from '../../core/bench/bench.ts';
import type { Moment } from '../../core/clock/moment.ts';
import { stepsOf } from '../../core/respond/views.ts';
import { currentStep } from '../../core/work/progress.ts';
import type { Ear } from '../ear/earPort.ts';
import type { Mouth } from '../mouth/mouth.ts';
import type * as Answering from './answering.ts';

/** Tells the ear what may be said next, and the mouth what it will probably have to say: again only when that has changed. */
export class Foreseen {
  readonly #ear: Pick<Ear, 'setGrammar'>;
  readonly #mouth: Pick<Mouth, 'prepare'>;
  /** What the ear was last told that may be said. */
  #listensFor = '';
  /** The grounds that what it listens for stands on. */
  #grounds: ReadonlySet<string> = new Set();
  /** What the mouth's likely replies were made from. */
  #readyFor: readonly unknown[] = [];

  constructor({ ear, mouth }: { readonly ear: Pick<Ear, 'setGrammar'>; readonly mouth: Pick<Mouth, 'prepare'> }) {
    this.#ear = ear;
    this.#mouth = mouth;
  }

  follow(answering: typeof Answering, bench: Bench, now: Moment): void {
    this.#listenFor(answering, bench);
    this.#makeReady(answering, bench, now);
  }

  #listenFor({ phrasesFor, sentencesFor, groundsOf }: typeof Answering, bench: Bench): void {
    const phrases = phrasesFor(bench);
    const { addressWord, rounding: { unit } } = bench.state.settings;
    const said = [addressWord, unit, bench.conversation.question?.kind, ...phrases].join('|');
    // What nothing stands on any more is listened for until the next change: only what is missing is worth one of its own.
    const grounds = groundsOf(bench);
    if (said === this.#listensFor && [...grounds].every((ground) => this.#grounds.has(ground))) return;
    this.#listensFor = said;
    this.#grounds = grounds;
    void this.#ear.setGrammar(phrases, addressWord, sentencesFor(bench));
  }

  /** What will probably be asked at this step; made anew when the step, the measurements or the rounding change. */
  #makeReady({ likelyReplies }: typeof Answering, bench: Bench, now: Moment): void {
    const { state } = bench;
    const step = currentStep(stepsOf(state), state)?.id;
    const stands = [step, state.measurements, state.settings.rounding, state.piece] as const;
    if (stands.every((one, index) => one === this.#readyFor[index])) return;
    this.#readyFor = stands;
    this.#mouth.prepare(likelyReplies(bench, now));
  }
}
