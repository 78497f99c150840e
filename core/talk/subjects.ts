import type { Bench } from '../bench/bench.ts';
import { sayNumber } from '../length/say.ts';
import type { SizeOwner } from '../piece/describe.ts';
import type { SizeMention } from '../work/step.ts';
import { namesOf, type NamedOwner, type Names, type OwnerMention } from './names.ts';
import { copyAt, copyMentions, COPY_WORDS, type CopyMention } from './readCopy.ts';
import { jointsAtHand } from './jointsAtHand.ts';
import type { Labels, Reading, Slot, SoundReading } from './slot.ts';
import { canonical, nameKey } from './words.ts';

/** Why nothing of a piece can be named. */
export const NO_PIECE = 'there is no piece on the bench';
const LONGEST_NAME = 8;
const LONGEST_SIZE = 14;

/** Reads what has sizes: a part, one copy of it, a joint or one of its halves, a parameter. */
export function readOwner(words: readonly string[], bench: Bench): readonly Reading<OwnerMention>[] {
  const { piece } = bench.state;
  if (!piece) return [{ fault: NO_PIECE }];
  const names = namesOf(piece);
  if (!words.every((word) => names.words.has(canonical(word)) || COPY_WORDS.has(word))) return [{ fault: `nothing in this piece is called “${words.join(' ')}”` }];
  const mentions = copyMentions(words, names.places);
  const found = mentions.flatMap((mention) => [
    ...copied(names.exact, mention).map((owner) => withCopy(owner, mention, bench)),
    ...copied(names.loose, mention).map((owner) => loosely(withCopy(owner, mention, bench))),
  ]);
  const sound = found.filter((reading) => 'value' in reading);
  if (sound.length > 0) return atHand(sound, bench);
  return found.length > 0 ? found.slice(0, 1) : [{ fault: `nothing in this piece is called “${words.join(' ')}”` }];
}

/** Of several joints that go by one name ('the mortise'), those at hand when there are such; a size that has the name too is not meant where there is one of them. */
function atHand(found: readonly SoundReading<OwnerMention>[], bench: Bench): readonly SoundReading<OwnerMention>[] {
  const named = found.filter(({ value: { owner } }) => owner.kind === 'joint');
  if (named.length < 2) return found;
  const joints = jointsAtHand(bench);
  const near = named.filter(({ value: { owner } }) => joints.includes(owner.id));
  if (near.length === 0) return found;
  const only = near.every(({ value: { owner } }) => owner.id === near[0]?.value.owner.id);
  return found.flatMap((one) => (near.includes(one) ? [only ? wholly(one) : one] : named.includes(one) || (only && one.value.owner.kind === 'parameter') ? [] : [one]));
}

/** Meant as surely as by the whole of its name. */
function wholly<Value>({ value, labels }: SoundReading<Value>): SoundReading<Value> {
  return { value, ...(labels ? { labels } : {}) };
}

/** The owners of that name; parameters come in no copies and have no place. */
function copied(index: Names['exact'], { name, copy, place }: CopyMention): readonly NamedOwner[] {
  const owners = index.get(name) ?? [];
  return copy === undefined && place === undefined ? owners : owners.filter(({ owner }) => owner.kind !== 'parameter');
}

function loosely<Value>(reading: Reading<Value>): Reading<Value> {
  return 'value' in reading ? { ...reading, loose: true } : reading;
}

function withCopy(owner: NamedOwner, { copy, place }: CopyMention, bench: Bench): Reading<OwnerMention> {
  const meant = place === undefined ? copy : copyAt(bench.state, owner.owner.id, place);
  if (place !== undefined && meant === undefined) return { fault: `no ${owner.say} has been put ${place} yet`, partly: true };
  if (meant !== undefined && (meant < 1 || meant > owner.owner.count)) {
    return { fault: `there is no ${owner.say} ${sayNumber(meant)}; this piece has ${sayNumber(owner.owner.count)}`, partly: true };
  }
  return { value: { ...owner, ...(meant === undefined ? {} : { copy: meant }) }, labels: [owner.say, owner.say] };
}

/** Reads a size by its owner and dimension, in either order: 'leg two width', 'width of the second leg'. */
export function readSize(words: readonly string[], bench: Bench): readonly Reading<SizeMention>[] {
  const { words: known } = namesOf(bench.state.piece);
  if (!words.every((word) => known.has(canonical(word)) || COPY_WORDS.has(word))) return [noSuchSize(words, bench)];
  const pairs = words.flatMap((word, at) => [
    ...(at > 0 ? [{ owner: words.slice(0, at), dimension: words.slice(at) }] : []),
    ...(word === 'of' && at > 0 ? [{ owner: words.slice(at + 1), dimension: words.slice(0, at) }] : []),
  ]);
  const readings = [{ owner: words, dimension: [] }, ...pairs].flatMap(({ owner, dimension }) => sizesAt(owner, dimension, bench));
  const sound = readings.filter((reading) => 'value' in reading);
  if (sound.length > 0) return sound;
  return readings.length > 0 ? readings.slice(0, 1) : [noSuchSize(words, bench)];
}

function noSuchSize(words: readonly string[], { state: { piece } }: Bench): Reading<SizeMention> {
  return { fault: piece ? `no size of this piece is called “${words.join(' ')}”` : NO_PIECE };
}

function sizesAt(ownerWords: readonly string[], dimensionWords: readonly string[], bench: Bench): Reading<SizeMention>[] {
  const dimension = nameKey(dimensionWords);
  return readOwner(ownerWords, bench).flatMap((reading): Reading<SizeMention>[] => {
    if ('fault' in reading) return reading.partly && dimensionWords.length > 0 ? [reading] : [];
    const found = sizeOfOwner(reading.value, [dimension]);
    return found ? [{ ...found, ...(reading.loose ? { loose: true } : {}) }] : [];
  });
}

/** The first of the dimensions that the owner has; the empty one is a size that stands by itself. */
export function sizeOfOwner(owner: OwnerMention, dimensions: readonly string[]): { readonly value: SizeMention; readonly labels: Labels } | undefined {
  const found = dimensions.map((dimension) => owner.dimensions.get(dimension)).find((size) => size !== undefined);
  if (!found) return undefined;
  const copy = owner.copy === undefined ? {} : { copy: owner.copy };
  return { value: { size: found.size, ...copy }, labels: [owner.say, owner.owner.kind === 'parameter' ? found.say : `${owner.say}, ${found.say}`] };
}

export const ownerSlot: Slot<OwnerMention> = {
  longest: LONGEST_NAME,
  read: readOwner,
  samples: ({ state }) => namesOf(state.piece).owners.flatMap(({ say, owner }) => [say, ...copySamples(say, owner.kind === 'part' ? owner.count : 1), ...pluralSample(owner)]),
};

/** The same, with examples of joints. */
export const jointSlot: Slot<OwnerMention> = { ...ownerSlot, samples: ({ state }) => namesOf(state.piece).owners.flatMap(({ say, owner: { kind } }) => (kind === 'joint' ? [say] : [])) };

export const sizeSlot: Slot<SizeMention> = {
  longest: LONGEST_SIZE,
  read: readSize,
  samples: ({ state }) => sizeSamples(namesOf(state.piece).owners),
};

export const partSlot: Slot<{ readonly part: string; readonly copy?: number }> = {
  longest: LONGEST_NAME,
  read: (words, bench) => readOwner(words, bench).flatMap((reading): Reading<{ readonly part: string; readonly copy?: number }>[] => {
    if ('fault' in reading) return [reading];
    const { owner, copy } = reading.value;
    return owner.kind === 'part' ? [{ value: { part: owner.id, ...(copy === undefined ? {} : { copy }) }, labels: [owner.name, owner.name], ...(reading.loose ? { loose: true } : {}) }] : [];
  }),
  samples: ({ state }) => namesOf(state.piece).owners.filter(({ owner }) => owner.kind === 'part').flatMap(({ owner }) => [owner.name, ...pluralSample(owner)]),
};

export const copySlot: Slot<{ readonly part: string; readonly copy: number }> = {
  longest: LONGEST_NAME,
  read: (words, bench) => partSlot.read(words, bench).flatMap((reading): Reading<{ readonly part: string; readonly copy: number }>[] => {
    if ('fault' in reading) return [reading];
    const { part, copy } = reading.value;
    // 'board one' is a board of the panel, not the only kneading board.
    if (reading.loose === true && namesOf(bench.state.piece).parts.get(part)?.count === 1) return [];
    return copy === undefined ? [{ fault: 'which copy is meant is not clear; say its number', partly: true }] : [{ ...reading, value: { part, copy } }];
  }),
  // Only what stands in a place of its own is told apart by its faces.
  samples: ({ state }) => [...namesOf(state.piece).parts.values()].flatMap(({ name, count, places = [] }) => (places.length > 0 ? copySamples(name, count) : [])),
};

/** Which dimension a copy was counted off: at most eight of them, for the recogniser needs the words and not every pair. */
function copySamples(name: string, count: number): string[] {
  return count < 2 ? [] : Array.from({ length: Math.min(count, 8) }, (_, index) => `${name} ${sayNumber(index + 1)}`);
}

function pluralSample({ kind, plural, count }: SizeOwner): string[] {
  return kind === 'part' && count > 1 ? [plural] : [];
}

/** Every size once by its first name, and the other names of dimensions once among all owners. */
function sizeSamples(owners: readonly NamedOwner[]): string[] {
  const shown = new Set<string>();
  return owners.flatMap(({ say, owner, dimensions }) => {
    const sizes = new Set<string>();
    const told = [...dimensions].filter(([dimension, { size, toldOnly }]) => toldOnly !== true && (!sizes.has(size) || !shown.has(dimension)) ? (sizes.add(size), shown.add(dimension), true) : false);
    return told.map(([dimension], index) => {
      const copy = owner.kind === 'part' && owner.count > 1 && index % 2 === 1 ? ` ${sayNumber((index % owner.count) + 1)}` : '';
      return dimension === '' ? say : `${say}${copy} ${dimension}`;
    });
  });
}
