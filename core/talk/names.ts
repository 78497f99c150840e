import type { Part } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { describeSize, sizeNames, type SizeDescription, type SizeOwner } from '../piece/describe.ts';
import type { SizeName } from '../piece/measurement.ts';
import { canonicalWords } from './words.ts';

/** A size under one of its dimension names. */
export interface NamedSize {
  readonly size: SizeName;
  /** As it is said: 'shoulder to shoulder'. */
  readonly say: string;
  /** Under the name that says what it is measured from, as it is told: nobody asks so. */
  readonly toldOnly?: true;
}

/** Something with sizes, under one of its names; a joint goes by its tenon and by its mortise too. */
export interface NamedOwner {
  readonly owner: SizeOwner;
  readonly say: string;
  /** Dimension name → the size. An empty name is a parameter that is a size by itself. */
  readonly dimensions: ReadonlyMap<string, NamedSize>;
}

/** An owner as it was spoken of, with the copy that was meant. */
export interface OwnerMention extends NamedOwner {
  readonly copy?: number;
}

export interface Names {
  /** By the whole name, and by a piece of it that stands for several: 'rail' for the long rail and the short rail. */
  readonly exact: ReadonlyMap<string, readonly NamedOwner[]>;
  readonly loose: ReadonlyMap<string, readonly NamedOwner[]>;
  /** Every owner once, under its first name. */
  readonly owners: readonly NamedOwner[];
  readonly parts: ReadonlyMap<string, Part>;
  /** Places of copies, by their name. */
  readonly places: ReadonlyMap<string, string>;
  /** Every word of a name, a dimension or a place: anything else cannot be part of one. */
  readonly words: ReadonlySet<string>;
}

/** Dimension nouns that 'how long' and its kin ask for. */
const DIMENSION_NOUNS: ReadonlySet<string> = new Set(['length', 'width', 'thickness', 'depth', 'height', 'diameter']);
/** Other names for a dimension, as makers say them; common practice, no source. */
const ALSO: ReadonlyMap<string, readonly string[]> = new Map([
  ['shoulder to shoulder', ['shoulder', 'shoulder length', 'between shoulder', 'shoulder distance', 'between tenon', 'length shoulder to shoulder', 'length between shoulder', 'length between tenon']],
  ['length', ['full length', 'overall length', 'whole length']],
]);
const NO_NAMES: Names = { exact: new Map(), loose: new Map(), owners: [], parts: new Map(), places: new Map(), words: new Set() };
const namesByPiece = new WeakMap<LoadedPiece, Names>();

/** The names that can be said of the piece on the bench, made once for each piece. */
export function namesOf(piece: LoadedPiece | null): Names {
  if (!piece) return NO_NAMES;
  const kept = namesByPiece.get(piece);
  if (kept) return kept;
  const names = makeNames(piece);
  namesByPiece.set(piece, names);
  return names;
}

/** A part under its first name. */
export function partNamed(piece: LoadedPiece | null, part: string): NamedOwner | undefined {
  return namesOf(piece).owners.find(({ owner: { kind, id } }) => kind === 'part' && id === part);
}

interface Sized { readonly size: SizeName; readonly description: SizeDescription }
interface Alias { readonly name: string; readonly owner: NamedOwner }

function makeNames(piece: LoadedPiece): Names {
  const sized = sizeNames(piece).flatMap((size) => {
    const description = describeSize(piece, size);
    return description ? [{ size, description }] : [];
  });
  const owned = groupBy(sized.filter(({ description }) => description.owner.kind !== 'parameter'), ({ description }) => description.owner.id);
  const aliases = [
    ...[...owned.values()].flatMap((sizes) => ownerAliases(piece, sizes)),
    ...parameterAliases(piece, sized.filter(({ description }) => description.owner.kind === 'parameter')),
  ];
  const exact = [...aliases, ...aliases.flatMap(turnedRound)];
  const places = new Map(piece.file.parts.flatMap((part) => part.places ?? []).map((place) => [key(place), place]));
  return {
    exact: indexed(exact),
    loose: looselyIndexed(aliases),
    owners: [...new Map(aliases.map(({ owner }) => [`${owner.owner.kind} ${owner.say}`, owner])).values()],
    parts: new Map(piece.file.parts.map((part) => [part.id, part])),
    places,
    words: new Set([...exact.flatMap(({ name, owner }) => [name, ...owner.dimensions.keys()]), ...places.keys()].flatMap((name) => name.split(' '))),
  };
}

function ownerAliases(piece: LoadedPiece, sizes: readonly Sized[]): Alias[] {
  const [first] = sizes;
  if (first === undefined) return [];
  const { owner } = first.description;
  const part = piece.file.parts.find(({ id }) => id === owner.id);
  if (owner.kind === 'part') {
    const named: NamedOwner = { owner, say: owner.name, dimensions: dimensionsOf(sizes, key(owner.name)) };
    return distinct([owner.name, owner.plural, ...(part?.alsoCalled ?? [])]).map((name) => ({ name, owner: named }));
  }
  const whole: NamedOwner = { owner, say: owner.name, dimensions: dimensionsOf(sizes, key(owner.name)) };
  return [{ name: key(owner.name), owner: whole }, ...jointAliases(piece, owner, sizes)];
}

/** The two halves of a joint by their own names: 'long rail tenon', 'leg mortise'. */
function jointAliases(piece: LoadedPiece, owner: SizeOwner, sizes: readonly Sized[]): Alias[] {
  const joint = piece.file.joints.find(({ id }) => id === owner.id);
  if (joint?.kind !== 'mortise and tenon') return [];
  const nameOf = (id: string): string => piece.file.parts.find((part) => part.id === id)?.name ?? id;
  const half = (of: string, word: 'tenon' | 'mortise' | 'slot' | 'haunch'): Alias => {
    const name = key(`${of} ${word}`);
    return { name, owner: { owner, say: `${nameOf(joint.tenonOn)} ${word}`, dimensions: dimensionsOf(sizes, word === 'slot' ? 'mortise' : word) } };
  };
  const halves = [half(nameOf(joint.tenonOn), 'tenon'), half(nameOf(joint.tenonOn), 'mortise'), half(nameOf(joint.mortiseIn), 'mortise'), ...(joint.haunch === undefined ? [] : [half(nameOf(joint.tenonOn), 'haunch')]), ...(joint.shape === 'bridle' ? [half(nameOf(joint.tenonOn), 'slot'), half(nameOf(joint.mortiseIn), 'slot')] : [])];
  return halves.filter(({ name }) => name !== key(owner.name));
}

const HALVES: ReadonlySet<string> = new Set(['tenon', 'mortise', 'slot', 'haunch']);

/** 'tenon of the long rail', for the long rail tenon. */
function turnedRound({ name, owner }: Alias): Alias[] {
  const words = name.split(' ');
  const half = words.at(-1) ?? '';
  return owner.owner.kind === 'joint' && words.length > 1 && HALVES.has(half) ? [{ name: `${half} of ${words.slice(0, -1).join(' ')}`, owner }] : [];
}

/** 'inside length' is the length of the inside, 'height' that of the piece, 'overhang' a size by itself. */
function parameterAliases(piece: LoadedPiece, parameters: readonly Sized[]): Alias[] {
  const grouped = new Map<string, Map<string, Sized>>();
  for (const parameter of parameters) {
    const words = canonicalWords(parameter.description.say);
    const noun = words.at(-1) ?? '';
    const isDimension = DIMENSION_NOUNS.has(noun);
    const owners = !isDimension ? [words.join(' ')] : words.length > 1 ? [words.slice(0, -1).join(' ')] : ['piece', key(piece.file.name)];
    for (const owner of owners) grouped.set(owner, (grouped.get(owner) ?? new Map<string, Sized>()).set(isDimension ? noun : '', parameter));
    if (isDimension && words.length === 1) grouped.set(noun, new Map([['', parameter]]));
  }
  return [...grouped].flatMap(([name, sizes]) => {
    const [first] = sizes.values();
    if (first === undefined) return [];
    const dimensions = new Map([...sizes].map(([noun, { size, description }]) => [noun, { size, say: description.say }]));
    return [{ name, owner: { owner: first.description.owner, say: dimensions.has('') ? first.description.say : name, dimensions } }];
  });
}

/**
 * The dimension names of an owner. A word that the owner's name ends with is not said twice: the tenon length of
 * the long rail tenon is its length.
 */
function dimensionsOf(sizes: readonly Sized[], ownerName: string): ReadonlyMap<string, NamedSize> {
  const lastWord = ownerName.split(' ').at(-1) ?? '';
  const named = new Map<string, NamedSize>();
  const shortened = new Map<string, NamedSize>();
  for (const { size, description: { say, sizeKey, from } } of sizes) {
    const target: NamedSize = { size, say };
    const spoken = key(say);
    const spelled = key(sizeKey.replace(/([a-z0-9])([A-Z])/g, '$1 $2'));
    const asked: readonly (readonly [string, NamedSize])[] = [spoken, spelled, ...(ALSO.get(spoken) ?? [])].map((way) => [way, target] as const);
    for (const [way, meant] of [...asked, ...(from === undefined ? [] : [[`${spoken} ${key(from)}`, { ...target, toldOnly: true }] as const])]) {
      if (!named.has(way)) named.set(way, meant);
      if (way.startsWith(`${lastWord} `)) shortened.set(way.slice(lastWord.length + 1), meant);
    }
  }
  // What the owner's own word leads to goes before the same dimension of anything else in it.
  return new Map([...named, ...shortened]);
}

/** By the end of a name, 'rail' for the long rail; of a parameter, if nothing else goes by it, by its beginning: 'overhang'. */
function looselyIndexed(aliases: readonly Alias[]): ReadonlyMap<string, readonly NamedOwner[]> {
  const endings = aliases.flatMap((alias) => shorter(alias, (words, count) => words.slice(count)));
  const taken = new Set([...aliases, ...endings].map(({ name }) => name));
  const beginnings = aliases.filter(({ owner }) => owner.owner.kind === 'parameter').flatMap((alias) => shorter(alias, (words, count) => words.slice(0, count)));
  return indexed([...endings, ...beginnings.filter(({ name }) => !taken.has(name))]);
}

function shorter({ name, owner }: Alias, cut: (words: readonly string[], count: number) => readonly string[]): Alias[] {
  const words = name.split(' ');
  return words.slice(1).map((_, index) => ({ name: cut(words, index + 1).join(' '), owner }));
}

function indexed(aliases: readonly Alias[]): ReadonlyMap<string, readonly NamedOwner[]> {
  return new Map([...groupBy(aliases, ({ name }) => name)].map(([name, found]) => [name, [...new Set(found.map(({ owner }) => owner))]]));
}

function distinct(names: readonly string[]): string[] {
  return [...new Set(names.map(key))];
}

function key(name: string): string {
  return canonicalWords(name).join(' ');
}

function groupBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}
