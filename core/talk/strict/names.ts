import type { Bench } from '../../bench/bench.ts';
import { sayNumber, sayOrdinal } from '../../length/say.ts';
import { pluralOf } from '../../piece/describe.ts';
import { stepsFor } from '../../work/plan.ts';
import { namesOf } from '../names.ts';
import type { NamedOwner, Names } from '../names.ts';
import { canonicalWords } from '../words.ts';
import { all, either, NEVER, optional, shared } from './expression.ts';
import type { Expression } from './expression.ts';
import { spoken, UNDER_HUNDRED } from './numbers.ts';

/** Copies that there are not are heard too, to be told so, and so that five is not forced into four. */
const MOST_COPIES_HEARD = 12;

/** The names of a piece as expressions, one object for each. */
export interface SpokenNames {
  readonly owner: Expression;
  readonly part: Expression;
  readonly copy: Expression;
  readonly size: Expression;
  readonly dimension: Expression;
  readonly place: Expression;
  readonly step: Expression;
}

export function spokenNames(bench: Bench): SpokenNames {
  const names = namesOf(bench.state.piece);
  const aliases = [...aliasesOf(names.exact), ...aliasesOf(names.loose)];
  const groups = KINDS.map((kind) => groupOf(kind, aliases, [...names.places.values()].map(plain)));
  const [parts] = groups;
  return {
    owner: shared(oneOf(groups.map(({ referred }) => referred))),
    part: shared(parts?.referred ?? NEVER),
    copy: parts?.copies ?? NEVER,
    size: shared(oneOf(groups.map(sizesOf))),
    dimension: oneOf(groups.map(({ dimensions }) => dimensions)),
    place: oneOf([...names.places.values()].map(plain)),
    step: stepsOf(bench, names),
  };
}

interface Alias { readonly name: string; readonly said: readonly string[]; readonly owners: readonly NamedOwner[] }

const KINDS = ['part', 'joint', 'parameter'] as const;

/**
 * All parts, all joints, all parameters. Within a group any name goes with any dimension and any copy: what there is not is heard as it was said, and
 * told so, instead of being forced into what there is; and the grammar stays small.
 */
interface Group { readonly named: Expression; readonly copies: Expression; readonly referred: Expression; readonly dimensions: Expression; readonly standsAlone: Expression }

function groupOf(kind: typeof KINDS[number], all_: readonly Alias[], places: readonly string[]): Group {
  const aliases = all_.map((alias) => ({ ...alias, owners: alias.owners.filter(({ owner }) => owner.kind === kind) })).filter(({ owners }) => owners.length > 0);
  const named = oneOf(aliases.flatMap(({ said }) => said));
  const several = aliases.filter(({ owners }) => kind !== 'parameter' && owners.some(({ owner }) => owner.count > 1)).map(({ name }) => name);
  const copies = several.length === 0 ? NEVER : copiesOf(oneOf(several), kind === 'part' ? places : []);
  const dimensions = [...new Set(aliases.flatMap(({ owners }) => owners.flatMap((owner) => [...owner.dimensions.keys()])))].filter((name) => name !== '');
  const alone = aliases.filter(({ owners }) => owners.some((owner) => owner.dimensions.has('')));
  return { named, copies, referred: either(named, copies), dimensions: oneOf(dimensions.map(spellings)), standsAlone: oneOf(alone.flatMap(({ said }) => said)) };
}

function aliasesOf(index: Names['exact']): Alias[] {
  return [...index].map(([name, owners]) => {
    const asWritten = owners.map(({ say }) => plain(say)).filter((say) => canonicalWords(say).join(' ') === name);
    const plurals = owners.flatMap(({ owner }) => (owner.kind === 'part' && owner.count > 1 ? [plain(owner.plural)] : owner.kind === 'joint' ? [pluralOf(name)] : [])).filter((plural) => canonicalWords(plural).join(' ').endsWith(name));
    return { name, owners, said: [...new Set([...(asWritten.length > 0 ? asWritten : [name]), ...plurals.map((plural) => lastWords(plural, name))])] };
  });
}

/** Of 'long rails', for 'rail': 'rails'. */
function lastWords(plural: string, name: string): string {
  return plural.split(' ').slice(-name.split(' ').length).join(' ');
}

/** One copy of what there are several of: 'leg two', 'leg number two', 'second leg', 'front left leg'. */
function copiesOf(named: Expression, places: readonly string[]): Expression {
  return either(all(named, optional('number'), COPIES), all(ORDINALS, named), ...(places.length > 0 ? [all(either(...places), named)] : []));
}

const COPIES = either(...Array.from({ length: MOST_COPIES_HEARD }, (_, index) => spoken(index + 1)));
const ORDINALS = either(...Array.from({ length: MOST_COPIES_HEARD }, (_, index) => sayOrdinal(index + 1)));

/** 'leg two width', 'width of the leg', 'overhang'. */
function sizesOf({ referred, dimensions, standsAlone }: Group): Expression {
  return either(all(referred, dimensions), all(dimensions, 'of', optional('the'), referred), standsAlone);
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
  return either(...operations, ...(steps.length > 0 ? [all(either('step', 'step number', 'number'), UNDER_HUNDRED)] : []));
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
