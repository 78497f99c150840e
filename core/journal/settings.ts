import type { Rounding } from '../length/rounding.ts';

/** Words the model knows and that sound far from every command. */
export const ADDRESS_WORDS = ['bench', 'workshop', 'partner'] as const;
export type AddressWord = (typeof ADDRESS_WORDS)[number];

export interface Settings {
  readonly rounding: Rounding;
  /** 0 (mute) to 10. */
  readonly volume: number;
  readonly speech: 'normal' | 'slow';
  readonly theme: 'light' | 'dark' | 'by daylight';
  readonly textPercent: 100 | 125;
  readonly addressWord: AddressWord;
  readonly listening: boolean;
  /** Seconds of chopping between looks at the edge. */
  readonly breakSeconds: number;
}

export const DEFAULT_SETTINGS: Settings = {
  rounding: { unit: 'inch', denominator: 32 },
  volume: 7,
  speech: 'normal',
  theme: 'light',
  textPercent: 100,
  addressWord: 'bench',
  listening: true,
  breakSeconds: 60,
};
