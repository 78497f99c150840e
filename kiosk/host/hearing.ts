import type { Bench } from '../../core/bench/bench.ts';
import type { Moment } from '../../core/clock/moment.ts';
import type { Ear } from '../ear/earPort.ts';
import { chooseModel, listModels, type SpeechModel } from '../ear/models.ts';
import type { ModelInUse } from '../ear/recogniserCare.ts';
import type { HearingView, TrialView } from '../hostPort.ts';
import type { MicrophoneTrial } from './microphoneTrial.ts';

export interface HearingOptions {
  readonly ear: () => Ear;
  readonly bench: () => Bench;
  readonly now: () => Moment;
  readonly notice: (sentence: string) => void;
  readonly changed: () => void;
}

/** While a model is being checked, its verdict is asked for this often. */
const LOOK_AGAIN_MS = 5_000;

/** What the ear hears with: which models there are and which is in use; and the trial of the microphone, while its page is open. */
export class Hearing {
  readonly #options: HearingOptions;
  #models: readonly SpeechModel[] = [];
  #inUse: ModelInUse | undefined;
  #trying = false;
  #trial: MicrophoneTrial | undefined;
  #trialView: TrialView | null = null;

  constructor(options: HearingOptions) {
    this.#options = options;
  }

  view(cannotHear: readonly string[], guessed: readonly string[]): HearingView {
    return {
      model: this.#inUse === undefined ? null : { name: this.#nameOf(this.#inUse.url), loadMs: this.#inUse.loadMs },
      models: this.#models.map(({ name, chosen, url }) => ({ name, chosen, usable: url !== undefined })),
      cannotHear, guessed, trial: this.#trialView,
    };
  }

  loaded(model: ModelInUse): void {
    this.#inUse = model;
    this.#options.changed();
  }

  refused(url: string, reason: string): void {
    this.#options.notice(`The speech model “${this.#nameOf(url)}” cannot be used here (${reason}). I hear with the built-in one.`);
  }

  /** Looks which models there are, and tells what checks came to, until none is left to be checked. */
  async look(): Promise<void> {
    const before = this.#models;
    const { models, checking } = await listModels();
    this.#models = models;
    for (const { name, url, sentences, shipped } of models) {
      if (!shipped && url === undefined && sentences[0] !== undefined) this.#options.notice(`The speech model “${name}” is refused. ${sentences[0]}`);
    }
    const chosen = models.find((model) => model.chosen);
    if (chosen !== undefined && before.length > 0 && !before.some((model) => model.chosen && model.name === chosen.name)) {
      this.#options.notice(`The speech model “${chosen.name}” is good, and is used from the next start.${chosen.sentences.map((sentence) => ` ${sentence}`).join('')}`);
    }
    this.#options.changed();
    if (checking) setTimeout(() => void this.look(), LOOK_AGAIN_MS);
  }

  /** Hears with another model at once. */
  async choose(name: string): Promise<void> {
    try {
      await chooseModel(name);
    } catch (error) {
      this.#options.notice(`The speech model “${name}” was not chosen: ${error instanceof TypeError ? 'the bench’s server does not answer' : (error as Error).message}`);
      return;
    }
    this.#models = (await listModels()).models;
    this.#options.changed();
    await this.#options.ear().changeModel();
  }

  /** To be told at each change of the screen: the trial lasts as long as its page is open, and hears also when the ear is else off. */
  try(trying: boolean): void {
    if (trying === this.#trying) return;
    this.#trying = trying;
    const { ear, bench, now, changed } = this.#options;
    if (!trying) {
      this.#trial?.end();
      this.#trial = undefined;
      if (!bench().state.settings.listening) ear().stop();
      return;
    }
    if (!bench().state.settings.listening) void ear().start();
    void import('./microphoneTrial.ts').then(({ MicrophoneTrial: Trial }) => {
      if (!this.#trying || this.#trial !== undefined) return;
      this.#trial = new Trial({ ear: ear(), bench, now, changed: (view) => { this.#trialView = view; changed(); } });
    });
  }

  playBack(): Promise<void> {
    return this.#trial?.playBack() ?? Promise.resolve();
  }

  #nameOf(url: string): string {
    return this.#models.find((model) => model.url === url)?.name ?? decodeURIComponent(url.slice(url.lastIndexOf('/') + 1));
  }
}
