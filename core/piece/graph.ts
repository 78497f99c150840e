import { nanometres } from '../length/length.ts';
import { checkIsLength } from './dimension.ts';
import type { Declared, DeclaredSize, Owner } from './declared.ts';
import { findCircles, dependencyOrder } from './order.ts';
import type { ExpressionFault, Expression } from './expression.ts';
import { parseExpression } from './expression.ts';
import type { Formula, Reference } from './formula.ts';
import { formulaValue, makeFormula } from './formula.ts';
import type { JsonFault } from './jsonReader.ts';
import { MOST_FAULTS } from './jsonReader.ts';
import type { SizeLimits } from './limits.ts';
import { absurdity } from './limits.ts';
import { namesIn } from './linear.ts';
import type { SizeName } from './measurement.ts';
import { nearestName } from './nearest.ts';
import { offsetInString } from './place.ts';
import { writeExact } from './writeExact.ts';

/** One named size and what it stands on. */
export interface SizeNode {
  readonly name: SizeName;
  readonly owner: Owner;
  readonly key: string;
  /** Its expression, as written. */
  readonly is: string;
  readonly critical: boolean;
  /** It follows from others without being written in the file. */
  readonly derived: boolean;
  readonly formula: Formula;
}

/** All named sizes of a piece, in the order of the file, and an order in which each comes after what it stands on. */
export interface SizeGraph {
  readonly nodes: readonly SizeNode[];
  readonly indexOf: ReadonlyMap<SizeName, number>;
  readonly order: readonly number[];
  /** Nanometres by node, before anything is measured. */
  readonly planned: Float64Array;
}

interface Building {
  readonly text: string;
  readonly declared: Declared;
  readonly indexOf: ReadonlyMap<SizeName, number>;
  readonly faults: JsonFault[];
}

/**
 * Builds the graph of the sizes declared in `text`, works out the plan, and finds what is wrong: sizes that cannot be read, names that
 * nothing is called, circles, absurd sizes. The graph is undefined when there are faults.
 */
export function buildGraph(text: string, declared: Declared, limits: SizeLimits): { readonly graph: SizeGraph | undefined; readonly faults: readonly JsonFault[] } {
  const building: Building = { text, declared, indexOf: indexNames(declared), faults: [] };
  reportDoubles(building);
  const formulas = declared.sizes.map((size) => readFormula(building, size));
  const needs = formulas.map((formula) => formula?.references.map(({ node }) => node) ?? []);
  const order = dependencyOrder(needs);
  for (const circle of findCircles(needs, order)) reportCircle(building, circle);
  const planned = workOutPlan(building, formulas, order, limits);
  const nodes = nodesOf(declared, formulas);
  const sound = building.faults.length === 0 && nodes.length === formulas.length;
  return { graph: sound ? { nodes, indexOf: building.indexOf, order, planned } : undefined, faults: building.faults };
}

function nodesOf(declared: Declared, formulas: readonly (Formula | undefined)[]): readonly SizeNode[] {
  return declared.sizes.flatMap(({ name, owner, key, is, critical, derived }, index) => {
    const formula = formulas[index];
    return formula === undefined ? [] : [{ name, owner, key, is, critical, derived, formula }];
  });
}

/** The first of each name counts. */
function indexNames(declared: Declared): ReadonlyMap<SizeName, number> {
  const indexOf = new Map<SizeName, number>();
  declared.sizes.forEach(({ name }, index) => { if (!indexOf.has(name)) indexOf.set(name, index); });
  return indexOf;
}

function reportDoubles({ declared, indexOf, faults }: Building): void {
  declared.sizes.forEach(({ name, path, at, derived }, index) => {
    if (indexOf.get(name) === index || derived) return;
    faults.push({ at, path, expected: 'one size of each name', found: `a second ${name}`, message: `Two sizes are called ${name}: rename one of them.` });
  });
}

function readFormula(building: Building, size: DeclaredSize): Formula | undefined {
  const parsed = parseExpression(size.is);
  const expression = parsed.ok ? checkIsLength(parsed.value) : parsed;
  if (!expression.ok) { building.faults.push(inExpression(building, size, expression.fault)); return undefined; }
  const references = [...namesIn(expression.value)].map(([name, at]) => resolveName(building, size, name, at));
  const found = references.filter((reference) => reference !== undefined);
  return found.length < references.length ? undefined : makeFormula(expression.value, found);
}

function inExpression({ text }: Building, size: DeclaredSize, { at, expected, found, message }: ExpressionFault): JsonFault {
  const offset = size.derived ? size.at : offsetInString(text, size.at, at);
  return { at: offset, path: size.path, expected, found, message };
}

/** `leg.width`, or one copy's: `leg.2.width`. */
export function splitCopy(name: string): { readonly name: SizeName; readonly copy: number | undefined } {
  const parts = /^([A-Za-z0-9]+)\.([1-9]\d{0,3})\.(.+)$/u.exec(name);
  return parts === null ? { name, copy: undefined } : { name: `${parts[1] ?? ''}.${parts[3] ?? ''}`, copy: Number(parts[2]) };
}

function resolveName(building: Building, size: DeclaredSize, written: string, at: number): Reference | undefined {
  const { name, copy } = splitCopy(written);
  const node = building.indexOf.get(name);
  if (node === undefined) {
    if (building.declared.complete && !size.derived) building.faults.push(inExpression(building, size, dangling(building, written, name, at)));
    return undefined;
  }
  const count = building.declared.sizes[node]?.owner.count ?? 1;
  if (copy !== undefined && copy > count) {
    const fault = { at, expected: `a copy from 1 to ${count}`, found: `'${written}'`, message: `There ${count === 1 ? 'is only one' : `are only ${count}`}: name one of those.` };
    building.faults.push(inExpression(building, size, fault));
    return undefined;
  }
  return { name: written, node, copy };
}

function dangling({ indexOf, faults }: Building, written: string, name: string, at: number): ExpressionFault {
  // Past the faults that are told, the search for a near name would be for nothing.
  const near = faults.length < MOST_FAULTS ? nearestName(name, indexOf.keys()) : undefined;
  const owned = [...indexOf.keys()].filter((known) => known.startsWith(`${name}.`));
  const message = near !== undefined ? `No size is called ${written}. Did you mean ${near}?`
    : owned.length > 0 ? `${written} has several sizes: name one, such as ${owned.slice(0, 3).join(' or ')}.`
      : `No size is called ${written}: add it to the parameters, or look at how it is spelt.`;
  return { at, expected: 'the name of a size of this piece', found: `'${written}'`, message };
}

/** A circle of more sizes than this is not told name by name. */
const MOST_NAMED = 12;

function reportCircle({ declared, faults }: Building, circle: readonly number[]): void {
  const names = circle.map((index) => declared.sizes[index]?.name ?? '');
  const first = declared.sizes[circle[0] ?? 0];
  const shown = names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED), '…'] : names;
  const round = `${[...shown, names[0] ?? ''].join(' → ')}${names.length > MOST_NAMED ? ` (${names.length} sizes)` : ''}`;
  faults.push({
    at: first?.at ?? 0, path: first?.path ?? '$', expected: 'sizes that do not stand on themselves', found: `the circle ${round}`,
    message: 'Each of these stands on the next and the last on the first: give one of them a size of its own.',
  });
}

/** Sizes that stand on a faulty one are passed over: the fault is told once. */
function workOutPlan(building: Building, formulas: readonly (Formula | undefined)[], order: readonly number[], limits: SizeLimits): Float64Array {
  const planned = new Float64Array(formulas.length).fill(NaN);
  for (const index of order) {
    const formula = formulas[index];
    const size = building.declared.sizes[index];
    if (formula === undefined || size === undefined) continue;
    if (formula.references.some(({ node }) => Number.isNaN(planned[node] ?? NaN))) continue;
    const value = formulaValue(formula, ({ node }) => planned[node] ?? NaN);
    if (value === undefined) { building.faults.push(unworkable(building, size, formula.expression)); continue; }
    const length = nanometres(value);
    const absurd = size.derived ? undefined : absurdity(size.owner, size.key, length, limits);
    if (absurd === undefined) planned[index] = value;
    else building.faults.push({ at: size.at, path: size.path, expected: absurd.expected, found: `${size.name} = ${writeExact(length)}`, message: absurd.message });
  }
  return planned;
}

function unworkable(building: Building, size: DeclaredSize, expression: Expression): JsonFault {
  const fault = { at: expression.at, expected: 'a size that can be worked out', found: `'${size.is.slice(0, 60)}'`, message: 'It divides by nothing, or goes beyond all bounds: look at what stands under the division.' };
  return inExpression(building, size, fault);
}
