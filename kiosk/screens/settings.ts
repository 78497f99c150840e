import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { sayDuration } from '../../core/clock/sayDuration.ts';
import { ADDRESS_WORDS, STANDINGS } from '../../core/journal/settings.ts';
import type { Settings } from '../../core/journal/settings.ts';
import { PAPERS } from '../../core/layout/paper/paperSize.ts';
import { nanometres } from '../../core/length/length.ts';
import type { Rounding } from '../../core/length/rounding.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { nextModel } from './nextModel.ts';
import { LeafingScreen } from './leafing.ts';

const ROUNDINGS: readonly Rounding[] = [
  { unit: 'inch', denominator: 8 }, { unit: 'inch', denominator: 16 }, { unit: 'inch', denominator: 32 }, { unit: 'inch', denominator: 64 }, { unit: 'millimetre', step: nanometres(500_000) },
];
const THEMES = ['light', 'dark', 'by daylight'] as const;
/** Pounds-force, from a light clamp to a heavy one; any other by voice. */
const CLAMP_FORCES = [200, 300, 500, 800, 1000, 1500] as const;
const BREAK_SECONDS = [30, 60, 90, 120, 180, 300] as const;

/** What the maker has chosen; each key goes on to the next choice and says it. */
@customElement('bench-settings')
export class SettingsScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles];

  protected sheet(): TemplateResult {
    return choiceGrid(this.#choices(), this.page);
  }

  keys(): readonly KeySpec[] {
    return keyRow('settings', { step: show({ name: 'step' }), quieter: { request: { kind: 'quieter' } }, louder: { request: { kind: 'louder' } },
      'more settings': this.pages() === 1 ? null : { here: () => { this.page = (this.page + 1) % this.pages(); } }, menu: show({ name: 'menu' }) });
  }

  protected pages(): number {
    return pagesOf(this.#choices().length);
  }

  #choices(): readonly Choice[] {
    const { settings } = this;
    const set = (setting: Partial<Settings>): Choice['does'] => ({ request: { kind: 'set', setting } });
    return [
      { label: 'sizes to', detail: roundingText(settings.rounding), does: set({ rounding: after(ROUNDINGS, ROUNDINGS.findIndex((each) => sameRounding(each, settings.rounding))) }) },
      { label: 'theme', detail: settings.theme, does: set({ theme: after(THEMES, THEMES.indexOf(settings.theme)) }) },
      { label: 'text size', detail: `${settings.textPercent} %`, does: set({ textPercent: settings.textPercent === 100 ? 125 : 100 }) },
      { label: 'speech', detail: `${settings.speech}, loudness ${settings.volume}`, does: set({ speech: settings.speech === 'normal' ? 'slow' : 'normal' }) },
      { label: 'call me', detail: `“${settings.addressWord}”`, does: set({ addressWord: after(ADDRESS_WORDS, ADDRESS_WORDS.indexOf(settings.addressWord)) }) },
      { label: 'listening', detail: settings.listening ? 'for my word' : 'only by the key', does: set({ listening: !settings.listening }) },
      { label: 'look at the edge', detail: `every ${sayDuration(settings.breakSeconds * 1000)}`, does: set({ breakSeconds: after(BREAK_SECONDS, BREAK_SECONDS.findIndex((each) => each === settings.breakSeconds)) }) },
      { label: 'loud shop', detail: settings.speakUp ? 'I speak up' : 'I stay as loud as set', does: set({ speakUp: !settings.speakUp }) },
      { label: 'hammering', detail: settings.waitForLull ? 'clocks wait for a lull' : 'clocks call at once', does: set({ waitForLull: !settings.waitForLull }) },
      { label: 'you stand', detail: settings.standing, does: set({ standing: after(STANDINGS, STANDINGS.indexOf(settings.standing)) }) },
      { label: 'caliper reads', detail: settings.instrumentUnit === 'inch' ? 'inches' : 'millimetres', does: set({ instrumentUnit: settings.instrumentUnit === 'inch' ? 'millimetre' : 'inch' }) },
      this.#microphone(),
      { label: 'try the microphone', detail: 'what is heard, and how well', does: show({ name: 'microphone' }) },
      this.#model(),
      { label: 'one clamp presses', detail: settings.clampLbf === undefined ? 'as usual of its kind' : `${settings.clampLbf} lbf`, does: set({ clampLbf: after(CLAMP_FORCES, CLAMP_FORCES.findIndex((each) => each === settings.clampLbf)) }) },
      { label: 'paper', detail: PAPERS[settings.paper].say, does: set({ paper: settings.paper === 'a4' ? 'letter' : 'a4' }) },
    ];
  }

  /** Goes through the system's choice and every microphone by name; one that is chosen and not there stays in the round. */
  #microphone(): Choice {
    const { microphones } = this.view;
    const wanted = this.settings.microphone;
    const names = [...new Set(['', ...microphones.map(({ label }) => label), wanted])];
    const used = microphones.find((each) => each.chosen)?.label;
    const detail = wanted === '' ? `the system’s choice${used === undefined ? '' : `: ${used}`}` : used === wanted ? wanted : `${wanted}: not there${used === undefined ? '' : `, ${used} stands in`}`;
    return {
      label: 'microphone', detail: microphones.length === 0 ? 'none found' : detail,
      does: { request: { kind: 'set', setting: { microphone: after(names, names.indexOf(wanted)) } } }, disabled: microphones.length === 0,
    };
  }

  #model(): Choice {
    const { models } = this.view.hearing;
    const usable = models.filter(({ usable }) => usable);
    const chosen = models.find((each) => each.chosen);
    return {
      label: 'speech model', detail: `${chosen?.name ?? 'built-in'}${usable.length > 1 ? ` (1 of ${usable.length})` : ''}`,
      does: { act: { kind: 'choose model', name: nextModel(models) } }, disabled: usable.length < 2,
    };
  }
}

/** The next of a round of choices; the first, when the present one is none of them. */
function after<Value>(choices: readonly [Value, ...Value[]] | readonly Value[], index: number): Value {
  const next = choices[(index + 1) % choices.length];
  if (next === undefined) throw new Error('a setting without choices');
  return next;
}

function sameRounding(a: Rounding, b: Rounding): boolean {
  return a.unit === 'inch' ? b.unit === 'inch' && a.denominator === b.denominator : b.unit === 'millimetre' && a.step === b.step;
}

function roundingText(rounding: Rounding): string {
  return rounding.unit === 'inch' ? `1/${rounding.denominator} inch` : `${rounding.step / 1_000_000} mm`;
}

declare global {
  interface HTMLElementTagNameMap { 'bench-settings': SettingsScreen }
}
