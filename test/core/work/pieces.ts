import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { sayLength } from '../../../core/length/say.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import type { Joint, Part, PieceFile } from '../../../core/piece/file.ts';
import { loadPiece, writePiece } from '../../../core/piece/load.ts';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';
import { starterPiece, type StarterInput } from '../../../core/piece/starter.ts';
import type { SizeMention } from '../../../core/work/step.ts';

/** Invented pieces, each small enough to read, for what the demo does not have. */

function load(text: string): LoadedPiece {
  const loaded = loadPiece(text);
  if (!loaded.ok) throw new Error(loaded.fault.map(({ message }) => message).join('\n'));
  return loaded.value;
}

export function bakersTable(): LoadedPiece {
  return load(readFileSync(new URL('../../../core/piece/demo/bakers-work-table.json', import.meta.url), 'utf8'));
}

/** A piece of such parts and joints, with everything else as usual. */
export function piece(parts: readonly Part[], joints: readonly Joint[] = [], other: Partial<PieceFile> = {}): LoadedPiece {
  return load(JSON.stringify({
    format: 'benchcall piece', version: 2, name: 'test piece', parameters: {}, parts, joints,
    allowances: { roughLength: '1 in', roughWidth: '1/4 in', roughThickness: '1/8 in' },
    tools: { chisels: ['1/4 in', '3/8 in'], clamps: [] },
    adhesive: { kind: 'PVA' }, finish: { kind: 'shellac', coats: 2, recoatHours: 2 },
    ...other,
  } satisfies PieceFile));
}

export function part(id: string, name: string, count: number, more: Partial<Part> = {}): Part {
  return {
    id, name, count, species: 'ash', made: { kind: 'solid' },
    ...more,
    sizes: { length: '20 in', width: '3 in', thickness: '1 in', ...more.sizes },
  };
}

function tenons(tenonOn: string, mortiseIn: string, more: Partial<Joint & { kind: 'mortise and tenon' }> = {}): Joint {
  const id = `${tenonOn}Into${mortiseIn}`;
  return {
    kind: 'mortise and tenon', id, name: id, tenonOn, mortiseIn,
    sizes: {
      tenonLength: '1 in', tenonThickness: '3/8 in', tenonWidth: '2 in',
      mortiseDepth: '1 1/16 in', mortiseWidth: '3/8 in', mortiseLength: '2 in', setback: '1/4 in', fromTop: '1/2 in',
    },
    ...more,
  };
}

/** One board, nothing joined: a breadboard. */
const breadboard = (): LoadedPiece => piece([part('board', 'board', 1, { sizes: { width: '9 in' } })]);

/** Parts, but no joints: a set of sticks. */
const sticks = (): LoadedPiece => piece([part('stick', 'stick', 3), part('block', 'block', 1)]);

/** Boards glued edge to edge, and nothing else. */
export const panelOnly = (): LoadedPiece => piece([part('lid', 'lid', 1, { made: { kind: 'panel', boards: 3 }, sizes: { width: '18 in' } })]);

/** Two stiles, two rails, no legs. */
export const frame = (): LoadedPiece => piece([part('stile', 'stile', 2), part('rail', 'rail', 2)], [tenons('rail', 'stile')]);

/** Four legs and one kind of rail all round. */
export const squareStool = (): LoadedPiece => piece(
  [part('leg', 'leg', 4, { sizes: { length: '17 in', width: '1 1/2 in', thickness: '1 1/2 in' } }), part('rail', 'rail', 4, { places: ['front', 'back', 'left', 'right'] })],
  [tenons('rail', 'leg')],
);

/** Three legs: they make no pairs. */
export const threeLegs = (): LoadedPiece => piece([part('leg', 'leg', 3), part('rail', 'rail', 3)], [tenons('rail', 'leg')]);

/** End frames with slats between rail and stretcher, and a long stretcher from one to the other. */
export const slattedEnds = (): LoadedPiece => piece(
  [
    part('leg', 'leg', 4), part('longRail', 'long rail', 2, { sizes: { length: '50 in' } }), part('shortRail', 'short rail', 2), part('stretcher', 'stretcher', 2),
    part('slat', 'slat', 10, { sizes: { width: '1 1/2 in' } }), part('shelfRail', 'shelf rail', 1, { sizes: { length: '48 in' } }),
  ],
  [
    tenons('longRail', 'leg'), tenons('shortRail', 'leg'), tenons('stretcher', 'leg'), tenons('slat', 'shortRail'), tenons('slat', 'stretcher'),
    tenons('shelfRail', 'stretcher'),
  ],
);

/** A panel with tenons on it, so that it is wanted before the joints; and a loose tray beside it, a frame of its own. */
export const cleatedLid = (): LoadedPiece => piece(
  [
    part('lid', 'lid', 1, { made: { kind: 'panel', boards: 2 }, sizes: { width: '12 in' } }), part('cleat', 'cleat', 2),
    part('side', 'tray side', 2), part('end', 'tray end', 2),
  ],
  [tenons('lid', 'cleat'), tenons('end', 'side')],
);

/** Buttons hold one part to another. */
function buttons(holds: string, to: string, by?: string): Joint {
  const id = `${holds}On${to}`;
  return { kind: 'fixing', id, name: `${holds} ${to} button`, holds, to, ...(by === undefined ? {} : { with: by }), count: 4, sizes: { grooveWidth: '3/8 in', grooveFromTop: '1/2 in' } };
}

/** A panel that is held by another panel, and by a part that is tenoned besides. */
const hungPanel = (): LoadedPiece => piece(
  [
    part('back', 'back', 1, { made: { kind: 'panel', boards: 4 } }), part('shelf', 'shelf', 2, { made: { kind: 'panel', boards: 2 } }),
    part('cleat', 'cleat', 4), part('button', 'button', 8), part('end', 'end', 2),
  ],
  [buttons('shelf', 'back', 'cleat'), buttons('back', 'end', 'button'), tenons('cleat', 'end')],
);

/** Any parts, made any way, joined any way that the file allows. */
export const anyPiece: fc.Arbitrary<LoadedPiece> = fc.record({
  parts: fc.array(fc.record({
    count: fc.integer({ min: 1, max: 6 }),
    made: fc.constantFrom<Part['made']>({ kind: 'solid' }, { kind: 'solid' }, { kind: 'laminated', layers: 3, layerThickness: '3/8 in' }, { kind: 'panel', boards: 2 }),
    more: fc.constantFrom<Partial<Part>>({}, { easing: '1/16 in' }, { footBevel: '1/8 in', referenceFace: 'outside face' }),
    inches: fc.integer({ min: 10, max: 40 }),
  }), { minLength: 1, maxLength: 6 }),
  joints: fc.array(fc.record({ fixing: fc.boolean(), a: fc.nat(), b: fc.nat(), c: fc.option(fc.nat()) }), { maxLength: 7 }),
}).map(({ parts, joints }) => {
  const names = ['leg', 'rail', 'slat', 'top', 'cleat', 'post'];
  const made = parts.map(({ count, made: how, more, inches }, index) => part(names[index] ?? '', names[index] ?? '', count, { made: how, ...more, sizes: { length: `${inches} in` } }));
  const any = (index: number): string => made[index % made.length]?.id ?? '';
  const joined = joints.flatMap(({ fixing, a, b, c }) => {
    if (any(a) === any(b)) return [];
    return [fixing ? buttons(any(a), any(b), c === null ? undefined : any(c)) : tenons(any(a), any(b))];
  });
  return piece(made, [...new Map(joined.map((joint) => [joint.id, joint])).values()]);
});

/** A table as the starter makes it. */
function startedTable(input: Partial<StarterInput>): LoadedPiece {
  const started = starterPiece(input);
  if (!started.ok) throw new Error(started.fault.map(({ message }) => message).join('\n'));
  return load(writePiece(started.value));
}

/** Every piece of this file by what it is. */
export const PIECES: Readonly<Record<string, () => LoadedPiece>> = {
  'the demo table': bakersTable, 'one board': breadboard, 'parts without joints': sticks, 'only a panel': panelOnly, 'a frame': frame,
  'a square stool': squareStool, 'a stool on three legs': threeLegs, 'ends with slats': slattedEnds, 'a lid with cleats and a tray': cleatedLid,
  'a hung panel': hungPanel,
  'a started table': () => startedTable({}),
  'a started table with solid legs': () => startedTable({ legs: 'solid', stretchers: 'sides', adhesive: 'epoxy', finish: 'shellac' }),
  'a started table with stretchers all round': () => startedTable({ stretchers: 'all round', layers: 4, adhesive: 'hot hide' }),
  'a started table with a back stretcher': () => startedTable({ stretchers: 'sides and back', finish: 'water-based varnish' }),
};

/** Says a size as planned, to thirty-seconds. */
export function saying(of: LoadedPiece): (mention: SizeMention) => string {
  const sizes = evaluate(of, []);
  return ({ size, copy }) => {
    const value = sizeOf(sizes, size, copy);
    if (value === undefined) throw new Error(`the piece has no ${size} of copy ${copy ?? 'any'}`);
    return sayLength(value.length, { unit: 'inch', denominator: 32 });
  };
}
