import type { Length } from '../../length/length.ts';
import { nanometres, NANOMETRES_PER_INCH } from '../../length/length.ts';

/** All that the starter needs to know, by the names it is asked under. */
export interface StarterInput {
  readonly name: string;
  readonly 'inside.length': Length;
  readonly 'inside.width': Length;
  readonly height: Length;
  readonly 'overhang.ends': Length;
  readonly 'overhang.sides': Length;
  readonly legs: 'laminated' | 'solid';
  readonly layers: number;
  readonly 'stock.layer': Length;
  readonly 'stock.leg': Length;
  readonly 'stock.rail': Length;
  readonly 'stock.top': Length;
  readonly stretchers: 'none' | 'sides' | 'sides and back' | 'all round';
  readonly species: string;
  readonly adhesive: string;
  readonly finish: string;
}

type StarterKey = keyof StarterInput;

interface Asked {
  /** What to ask for, in a few words. */
  readonly say: string;
  readonly help?: string;
  /** Asked only when another field has this value. */
  readonly when?: { readonly key: StarterKey; readonly is: string };
}
type Named<Key extends StarterKey> = Asked & { readonly key: Key };

/** One thing to ask, with its default and its limits: enough to draw a form from, or to ask on a command line. */
export type StarterField =
  | Named<LengthKey> & { readonly kind: 'length'; readonly unit: 'length'; readonly default: Length; readonly min: Length; readonly max: Length }
  | Named<'layers'> & { readonly kind: 'count'; readonly unit: 'none'; readonly default: number; readonly min: number; readonly max: number }
  | Named<'legs' | 'stretchers'> & { readonly kind: 'choice'; readonly unit: 'none'; readonly default: string; readonly choices: readonly string[] }
  | Named<'name' | 'species' | 'adhesive' | 'finish'> & { readonly kind: 'text'; readonly unit: 'none'; readonly default: string; readonly min: 1; readonly max: 80; readonly suggestions: readonly string[] };

type LengthKey = { [Key in StarterKey]: StarterInput[Key] extends Length ? Key : never }[StarterKey];

function inches(count: number): Length {
  return nanometres(count * NANOMETRES_PER_INCH);
}

function length(key: LengthKey, say: string, usual: number, min: number, max: number, more: Omit<Asked, 'say'> = {}): StarterField {
  return { kind: 'length', unit: 'length', key, say, default: inches(usual), min: inches(min), max: inches(max), ...more };
}

function text(key: 'name' | 'species' | 'adhesive' | 'finish', say: string, suggestions: readonly string[]): StarterField {
  return { kind: 'text', unit: 'none', key, say, default: suggestions[0] ?? '', min: 1, max: 80, suggestions };
}

/** In the order in which they are asked. Limits are what a leg-and-rail table stands within; common practice, no source. */
export const STARTER_FIELDS: readonly StarterField[] = [
  text('name', 'name of the piece', ['Table']),
  length('inside.length', 'inside length, leg to leg', 46, 8, 120, { help: 'What must go between the legs along the front.' }),
  length('inside.width', 'inside width, leg to leg', 20, 6, 60, { help: 'What must go between the legs at the ends.' }),
  length('height', 'height, floor to top face', 30, 12, 48),
  length('overhang.ends', 'overhang at the ends', 3, 0, 18),
  length('overhang.sides', 'overhang at the sides', 2, 0, 12),
  { kind: 'choice', unit: 'none', key: 'legs', say: 'how the legs are made', default: 'laminated', choices: ['laminated', 'solid'] },
  { kind: 'count', unit: 'none', key: 'layers', say: 'layers in a leg', default: 3, min: 2, max: 6, when: { key: 'legs', is: 'laminated' } },
  length('stock.layer', 'rough thickness of the boards for the layers', 1.25, 0.75, 2.5, { when: { key: 'legs', is: 'laminated' } }),
  length('stock.leg', 'rough thickness of the stock for the legs', 3, 1.5, 6, { when: { key: 'legs', is: 'solid' } }),
  length('stock.rail', 'rough thickness of the boards for rails and stretchers', 1.25, 0.75, 3),
  length('stock.top', 'rough thickness of the boards for the top', 1.5, 0.75, 4),
  { kind: 'choice', unit: 'none', key: 'stretchers', say: 'where stretchers go', default: 'none', choices: ['none', 'sides', 'sides and back', 'all round'] },
  text('species', 'species of wood', ['hard maple', 'white oak', 'red oak', 'white ash', 'black cherry', 'black walnut', 'American beech', 'yellow birch', 'yellow-poplar', 'eastern white pine']),
  text('adhesive', 'adhesive, by its class', ['PVA', 'liquid hide', 'hot hide', 'epoxy', 'polyurethane', 'urea-formaldehyde']),
  text('finish', 'finish, by its class', ['drying oil', 'mineral oil', 'oil and wax', 'shellac', 'wiping varnish', 'water-based varnish']),
];

/** What the starter makes when nothing is said. */
export const STARTER_DEFAULTS = Object.fromEntries(STARTER_FIELDS.map((field) => [field.key, field.default])) as unknown as StarterInput;
