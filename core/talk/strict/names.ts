import type { Bench } from '../../bench/bench.ts';
import { sayNumber, sayOrdinal } from '../../length/say.ts';
import { pluralOf } from '../../piece/describe.ts';
import { stepsFor } from '../../work/plan.ts';
import { namesOf } from '../names.ts';
import type { NamedOwner, Names } from '../names.ts';
import { canonicalWords } from '../words.ts';
import { all, either, NEVER, optional, rarely } from './expression.ts';
import type { Expression } from './expression.ts';
import { counted, RARE } from './numbers.ts';

/** The names of a piece as expressions, one object for each. */
export interface SpokenNames {
  readonly owner: Expression;
  readonly part: Expression;
  /** A part, all copies of it. */
  readonly parts: Expression;
  /** A joint, by its own name or that of its tenon, mortise or haunch. */
  readonly joint: Expression;
  /** One copy of what stands in places of its own. */
  readonly copy: Expression;
  readonly size: Expression;
  readonly dimension: Expression;
  readonly place: Expression;
  readonly step: Expression;
}

export function spokenNames(bench: Bench): SpokenNames {
  const names = namesOf(bench.state.piece);
  const aliases = [...aliasesOf(names.exact), ...aliasesOf(names.loose).flatMap(meaningful)];
  const placed = placesIn(bench, names);
  const groups = KINDS.flatMap((kind) => groupsOf(kind, aliases, placed));
  const [parts, joints] = KINDS.map((kind) => groups.filter((group) => group.kind === kind));
  return {
    owner: oneOf(groups.map(({ referred }) => referred)),
    part: oneOf((parts ?? []).map(({ referred }) => referred)),
    parts: oneOf((parts ?? []).map(({ named }) => named)),
    joint: oneOf((joints ?? []).map(({ named }) => named)),
    copy: oneOf((parts ?? []).map(({ inPlaces }) => inPlaces)),
    size: oneOf(groups.map(sizesOf)),
    dimension: oneOf([...new Set(groups.flatMap(({ dimensions }) => dimensions))].map(spellings)),
    place: oneOf([...names.places.values()].map(plain)),
    step: stepsOf(bench, names),
  };
}

interface Alias { readonly name: string; readonly said: readonly string[]; readonly owners: readonly NamedOwner[] }

const KINDS = ['part', 'joint', 'parameter'] as const;

/** Names that have the same dimensions, of which any goes with any of them. */
interface Group {
  readonly kind: typeof KINDS[number];
  /** Without a copy. */
  readonly named: Expression;
  readonly referred: Expression;
  /** One copy of what stands in places of its own. */
  readonly inPlaces: Expression;
  readonly dimensions: readonly string[];
  readonly standsAlone: boolean;
}

type PlacesOf = (owner: NamedOwner) => { readonly names: readonly string[]; readonly cost: number };

function groupsOf(kind: typeof KINDS[number], all_: readonly Alias[], placesOf: PlacesOf): Group[] {
  const aliases = all_.map((alias) => ({ ...alias, owners: alias.owners.filter(({ owner }) => owner.kind === kind) })).filter(({ owners }) => owners.length > 0);
  return by(aliases, (alias) => dimensionsOf(alias).join('|')).map(([, same]) => groupOf(kind, same, placesOf));
}

function groupOf(kind: typeof KINDS[number], aliases: readonly Alias[], placesOf: PlacesOf): Group {
  const named = oneOf(aliases.flatMap(({ said }) => said));
  const several = kind === 'parameter' ? [] : aliases.filter(({ owners }) => owners.some(({ owner }) => owner.count > 1));
  const standing = several.filter(({ owners }) => kind === 'part' && owners.some((owner) => placesOf(owner).names.length > 0));
  const atTheirPlaces = atPlaces(standing, placesOf);
  const dimensions = [...new Set(aliases.flatMap(dimensionsOf))];
  return {
    kind, named, referred: oneOf([named, ...numbered(several, kind === 'joint' ? RARE : 0), ...atTheirPlaces]), inPlaces: oneOf([...numbered(standing, 0), ...atTheirPlaces]),
    dimensions: dimensions.filter((name) => name !== ''), standsAlone: dimensions.includes(''),
  };
}

/** Where it is measured from is told when a size is, and never asked with it. */
function dimensionsOf({ owners }: Alias): string[] {
  return [...new Set(owners.flatMap(({ dimensions }) => [...dimensions].filter(([, { toldOnly }]) => toldOnly !== true).map(([name]) => name)))].sort();
}

/** The places of a part's copies; while none of them has been put anywhere, that is a rarer way to speak of them. */
function placesIn({ state: { places } }: Bench, { parts }: Names): PlacesOf {
  return ({ owner: { id } }) => ({ names: (parts.get(id)?.places ?? []).map(plain), cost: [...places.keys()].some((copy) => copy.startsWith(`${id}/`)) ? 0 : RARE });
}

/** Of a name that stands for several by a piece of it, what means something by itself: 'rail' for the long rail, 'overhang' for the overhang at the ends; but not 'end' or 'board'. */
function meaningful(alias: Alias): Alias[] {
  const { name } = alias;
  const owners = alias.owners.filter(({ owner, say }) => {
    const whole = canonicalWords(say);
    const relation = whole.findIndex((word) => RELATIONS.has(word));
    if (relation >= 0) return name === whole.slice(0, relation).join(' ');
    return whole.join(' ').endsWith(name) && (owner.kind === 'parameter' || canonicalWords(say).at(-1) === name.split(' ').at(-1));
  });
  return owners.length === 0 ? [] : [{ ...alias, owners }];
}

const RELATIONS: ReadonlySet<string> = new Set(['at', 'for', 'of', 'from', 'to', 'left']);

function aliasesOf(index: Names['exact']): Alias[] {
  return [...index].map(([name, owners]) => {
    const asWritten = owners.map(({ say }) => plain(say)).filter((say) => canonicalWords(say).join(' ') === name);
    const plurals = owners.flatMap(({ owner }) => (owner.kind === 'part' && owner.count > 1 ? [plain(owner.plural)] : owner.kind === 'joint' ? [pluralOf(name)] : [])).filter((plural) => canonicalWords(plural).join(' ').endsWith(name));
    return { name, owners, said: [...new Set([...(asWritten.length > 0 ? asWritten : [name, name.replace(' of ', ' of the ')]), ...plurals.map((plural) => lastWords(plural, name))])] };
  });
}

/** Of 'long rails', for 'rail': 'rails'. */
function lastWords(plural: string, name: string): string {
  return plural.split(' ').slice(-name.split(' ').length).join(' ');
}

/**
 * One copy of what there are several of: 'leg two', 'leg number two', 'second leg'. Of what there is not, only the one past the last is heard, to be told so:
 * who miscounts does so by one, and 'leg five' would else be taken for leg four.
 */
function numbered(aliases: readonly Alias[], cost: number): Expression[] {
  return by(aliases, ({ owners }) => Math.max(...owners.map(({ owner }) => owner.count))).map(([count, same]) => {
    const named = oneOf(same.map(({ name }) => name));
    const ordinals = either(...Array.from({ length: count }, (_, index) => sayOrdinal(index + 1).replaceAll('-', ' ')));
    return rarely(either(all(named, optional(rarely('number', RARE)), either(counted(1, count), rarely(counted(count + 1, count + 1), RARE))), all(ordinals, named)), cost);
  });
}

/** 'front left leg', 'back long rail': by the places that the part has. */
function atPlaces(aliases: readonly Alias[], placesOf: PlacesOf): Expression[] {
  return by(aliases, ({ owners }) => [...new Set(owners.flatMap((owner) => placesOf(owner).names))].join('|')).map(([places, same]) => rarely(
    all(either(...places.split('|')), oneOf(same.map(({ name }) => name))), Math.min(...same.flatMap(({ owners }) => owners.map((owner) => placesOf(owner).cost)))));
}

function by<Key>(aliases: readonly Alias[], keyOf: (alias: Alias) => Key): [Key, Alias[]][] {
  const groups = new Map<Key, Alias[]>();
  for (const alias of aliases) groups.set(keyOf(alias), [...(groups.get(keyOf(alias)) ?? []), alias]);
  return [...groups];
}

/** 'leg two width', 'width of the leg', 'overhang'. */
function sizesOf({ named, referred, dimensions, standsAlone }: Group): Expression {
  const dimension = oneOf(dimensions.map(spellings));
  return oneOf([...(dimensions.length > 0 ? [all(referred, dimension), all(dimension, 'of', optional('the'), referred)] : []), ...(standsAlone ? [named] : [])]);
}

/** A dimension may be said as several: 'shoulders'. */
function spellings(dimension: string): Expression {
  return dimension === 'shoulder' ? either('shoulders', 'shoulder') : all(dimension);
}

function stepsOf({ state: { piece } }: Bench, names: Names): Expression {
  const steps = piece ? stepsFor(piece) : [];
  const operations = [...new Set(steps.map(({ operation }) => operation))].map((operation) => {
    const parts = [...new Set(steps.filter((step) => step.operation === operation).flatMap(({ covers }) => covers.map(({ part }) => part)))];
    const on = oneOf(parts.flatMap((part) => plain(names.parts.get(part)?.name ?? '')));
    return either(plain(operation), all(plain(operation), optional(either('on', 'of')), optional('the'), on));
  });
  return either(...operations, ...(steps.length > 0 ? [all(either('step', rarely(either('step number', 'number'), RARE)), counted(1, Math.min(99, steps.length)))] : []));
}

function oneOf(options: readonly (Expression | string)[]): Expression {
  return options.length === 0 ? NEVER : either(...options);
}

/** In small letters, without punctuation, as it is heard. */
export function plain(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9']+/g, ' ').trim();
}

export function ordinalChoices(count: number): readonly string[] {
  return Array.from({ length: count }, (_, index) => [sayNumber(index + 1), `number ${sayNumber(index + 1)}`, `${sayOrdinal(index + 1)} one`, `the ${sayOrdinal(index + 1)} one`]).flat();
}
