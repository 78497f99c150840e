/**
 * Words that the voice says wrongly by itself, and how it should say them: its own phone names, each vowel with its stress (1) or
 * without (0). The voice reads them as additions to its lexicon. Only words that it says wrongly belong here; each says how.
 */
export interface Pronunciation {
  readonly word: string;
  readonly phones: string;
  /** What the voice says without this line. */
  readonly wrong: string;
}

const MORTISE = 'm ao1 r t ax0 s';
const MITRE = 'm ay1 t er0';
const MILLIMETRE = 'm ih1 l ax0 m iy0 t er0';
const CENTIMETRE = 's eh1 n t ax0 m iy0 t er0';
const METRE = 'm iy1 t er0';

export const PRONUNCIATIONS: readonly Pronunciation[] = [
  { word: 'mortise', phones: MORTISE, wrong: 'mor-tize' },
  { word: 'mortises', phones: `${MORTISE} ax0 z`, wrong: 'mor-tizes' },
  { word: 'mortised', phones: `${MORTISE} t`, wrong: 'mor-tized' },
  { word: 'mortising', phones: `${MORTISE} ih0 ng`, wrong: 'mor-tizing' },
  { word: 'mitre', phones: MITRE, wrong: 'mitt-ree' },
  { word: 'mitres', phones: `${MITRE} z`, wrong: 'mitters' },
  { word: 'mitred', phones: `${MITRE} d`, wrong: 'mitt-rd' },
  { word: 'tenoning', phones: 't eh1 n ax0 n ih0 ng', wrong: 'te-no-ning' },
  { word: 'planing', phones: 'p l ey1 n ih0 ng', wrong: 'planning' },
  { word: 'caul', phones: 'k ao1 l', wrong: 'with another vowel than in its plural' },
  { word: 'arris', phones: 'ae1 r ax0 s', wrong: 'err-iss' },
  { word: 'arrises', phones: 'ae1 r ax0 s ax0 z', wrong: 'a-rise-es' },
  { word: 'wind', phones: 'w ay1 n d', wrong: 'as the wind that blows; at the bench it is the twist of a board' },
  { word: 'bow', phones: 'b ow1', wrong: 'as to bow one\'s head; at the bench it is the curve of a board' },
  { word: 'bowed', phones: 'b ow1 d', wrong: 'as a bowed head' },
  { word: 'drawbore', phones: 'd r ao1 b ao0 r', wrong: 'without its last vowel' },
  { word: 'drawbored', phones: 'd r ao1 b ao0 r d', wrong: 'without its last vowel' },
  { word: 'tearout', phones: 't eh1 r aw0 t', wrong: 'as the tear of an eye' },
  { word: 'crosscuts', phones: 'k r ao1 s k ah0 t s', wrong: 'cross-kits' },
  { word: 'birdseye', phones: 'b er1 d z ay0', wrong: 'birds-sigh' },
  { word: 'acclimatize', phones: 'ax0 k l ay1 m ax0 t ay0 z', wrong: 'ackle-mat-ize' },
  { word: 'acclimatise', phones: 'ax0 k l ay1 m ax0 t ay0 z', wrong: 'ackle-mat-ize' },
  { word: 'urea', phones: 'y uh0 r iy1 ax0', wrong: 'your-ia' },
  { word: 'metre', phones: METRE, wrong: 'metter' },
  { word: 'metres', phones: `${METRE} z`, wrong: 'met-rz' },
  { word: 'millimetre', phones: MILLIMETRE, wrong: 'millimetter' },
  { word: 'millimetres', phones: `${MILLIMETRE} z`, wrong: 'millimet-rz' },
  { word: 'centimetre', phones: CENTIMETRE, wrong: 'centimetter' },
  { word: 'centimetres', phones: `${CENTIMETRE} z`, wrong: 'centimet-rz' },
];

/** The table as the file of additions that the voice reads. */
export function addenda(): string {
  return PRONUNCIATIONS.map(({ word, phones }) => `${word} : ${phones}\n`).join('');
}
