import type { PaperName } from '../layout/paper/paperSize.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import type { TemperatureScale } from '../wood/temperature.ts';
import type { Rounding } from '../length/rounding.ts';

/** Words the model knows and that sound far from every command. */
export const ADDRESS_WORDS = ['bench', 'workshop', 'partner'] as const;
export type AddressWord = (typeof ADDRESS_WORDS)[number];

/** Where the maker's ears usually are, beside the kiosk. */
export const STANDINGS = ['close', 'at the bench', 'across the shop'] as const;
export type Standing = (typeof STANDINGS)[number];

export interface Settings {
  readonly rounding: Rounding;
  /** 0 (mute) to 10. */
  readonly volume: number;
  readonly speech: 'normal' | 'slow';
  readonly theme: 'light' | 'dark' | 'by daylight';
  readonly textPercent: 100 | 125;
  readonly addressWord: AddressWord;
  readonly listening: boolean;
  /** Speak louder while the shop is loud. */
  readonly speakUp: boolean;
  /** Keep a clock's call back for a lull in the hammering, as long as that clock allows. */
  readonly waitForLull: boolean;
  readonly standing: Standing;
  /** The microphone's name as the browser gives it; '' for the one that the system prefers. */
  readonly microphone: string;
  /** Seconds of chopping between looks at the edge. */
  readonly breakSeconds: number;
  /** What is in the printer. */
  readonly paper: PaperName;
  /** Of a caliper or tape gauge that types, where it does not send its unit. */
  readonly instrumentUnit: 'inch' | 'millimetre';
  /** Of the honing guide that the maker owns: the radius of its roller, and how far the roller's axis lies under the back of the blade. */
  readonly guideRoller?: Length;
  readonly guideAxis?: Length;
  /** What the plane takes in one shaving as it is set, and how long the winding sticks are. */
  readonly shaving: Length;
  readonly stick: Length;
  /** Pounds-force that one of the maker's own clamps presses with; absent for what is usual of its kind. */
  readonly clampLbf?: number;
  /** The scale in which degrees are said and read when no other is named. */
  readonly temperature: TemperatureScale;
}

export const DEFAULT_SETTINGS: Settings = {
  rounding: { unit: 'inch', denominator: 32 },
  volume: 7,
  speech: 'normal',
  theme: 'light',
  textPercent: 100,
  addressWord: 'bench',
  listening: true,
  speakUp: true,
  waitForLull: true,
  standing: 'at the bench',
  microphone: '',
  breakSeconds: 60,
  paper: 'letter',
  instrumentUnit: 'inch',
  // Common practice, no source: a jointer set for three to six thousandths, sticks of two feet.
  shaving: nanometres((5 * NANOMETRES_PER_INCH) / 1000),
  stick: nanometres(24 * NANOMETRES_PER_INCH),
  temperature: 'celsius',
};
