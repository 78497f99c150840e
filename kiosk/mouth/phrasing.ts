/** A stretch of words said in one breath, and the silence after it. */
export interface SpokenPhrase {
  readonly text: string;
  /** Milliseconds of silence before the next phrase. */
  readonly pauseMs: number;
}

/**
 * Silence after a comma. The voice's own is between 60 and 150 ms, whatever stands beside it: too little to part the whole inches from the fraction.
 * 200 ms is heard as a pause and not as an end (common practice, no source).
 */
export const COMMA_PAUSE_MS = 200;
/** Silence between sentences. */
export const STOP_PAUSE_MS = 450;

/** A mark that parts phrases only where a space or the end follows: '3.5' and '1,000' stay whole. Dashes with spaces around them part as well. */
const PHRASE = /(.*?)(?:([,;:.?!]+)["')\]]*(?=\s|$)|\s[–—-]\s|\n|$)/gsu;

/** Cuts a text into phrases at its commas and full stops; the silence after each is `stretch` times the usual. */
export function splitPhrases(text: string, stretch = 1): readonly SpokenPhrase[] {
  const phrases: SpokenPhrase[] = [];
  for (const [, words = '', mark = ''] of text.matchAll(PHRASE)) {
    const spoken = words.replace(/["()[\]“”]/g, ' ').replace(/\s+/g, ' ').trim();
    if (!/[\p{Letter}\p{Number}]/u.test(spoken)) continue;
    phrases.push({ text: spoken, pauseMs: Math.round(stretch * (/[.?!]/.test(mark) ? STOP_PAUSE_MS : COMMA_PAUSE_MS)) });
  }
  return phrases;
}
