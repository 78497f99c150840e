import type { Part, SizeSource } from '../file.ts';
import type { Proportions } from './proportions.ts';
import type { StarterInput } from './fields.ts';
import { writeExact } from '../writeExact.ts';

const EASING = '1/16 in';

/** Which long stretchers there are. */
export function longStretchers({ stretchers }: StarterInput): readonly string[] {
  switch (stretchers) {
    case 'all round': return ['front', 'back'];
    case 'sides and back': return ['back'];
    case 'sides':
    case 'none': return [];
  }
}

export function partsOf(input: StarterInput, sizes: Proportions): readonly Part[] {
  const long = longStretchers(input);
  return [
    legOf(input, sizes),
    railOf(input, 'longRail', 'long rail', ['front', 'back'], { shoulders: held('inside.length'), width: 'rail.width', thickness: 'rail.thickness' }),
    railOf(input, 'shortRail', 'short rail', ['left', 'right'], { shoulders: held('inside.width'), width: 'rail.width', thickness: 'rail.thickness' }),
    ...(input.stretchers === 'none' ? [] : [
      railOf(input, 'sideStretcher', 'side stretcher', ['left', 'right'], { shoulders: held('shortRail.shoulders'), width: 'stretcher.width', thickness: 'stretcher.thickness' }),
    ]),
    ...(long.length === 0 ? [] : [
      railOf(input, 'longStretcher', 'long stretcher', long, { shoulders: held('longRail.shoulders'), width: 'stretcher.width', thickness: 'stretcher.thickness' }),
    ]),
    topOf(input, sizes),
    buttonOf(input, sizes),
  ];
}

function held(is: string): SizeSource {
  return { is, critical: true };
}

function legOf(input: StarterInput, { layerThickness }: Proportions): Part {
  const stock = writeExact(input.legs === 'laminated' ? input['stock.layer'] : input['stock.leg']);
  return {
    id: 'leg', name: 'leg', count: 4, places: ['front left', 'front right', 'back left', 'back right'], species: input.species,
    sizes: { length: held('height - top.thickness'), width: 'section.leg', thickness: 'section.leg', stock },
    made: input.legs === 'laminated' ? { kind: 'laminated', layers: input.layers, layerThickness: writeExact(layerThickness) } : { kind: 'solid' },
    referenceFace: 'face side', referenceEdge: 'face edge', easing: EASING, footBevel: '1/4 in',
  };
}

function railOf(input: StarterInput, id: string, name: string, places: readonly string[], sizes: { readonly shoulders: SizeSource; readonly width: string; readonly thickness: string }): Part {
  return {
    id, name, count: places.length, places, species: input.species,
    sizes: { shoulders: sizes.shoulders, length: `${id}.shoulders + 2 * ${id}Tenon.tenonLength`, width: sizes.width, thickness: sizes.thickness, stock: writeExact(input['stock.rail']) },
    made: { kind: 'solid' }, referenceFace: 'outside face', referenceEdge: 'top edge', easing: EASING,
  };
}

function topOf(input: StarterInput, { topThickness, boards }: Proportions): Part {
  return {
    id: 'top', name: 'top', alsoCalled: ['table top'], count: 1, species: input.species,
    sizes: {
      length: 'longRail.shoulders + 2 * leg.width + 2 * overhang.ends',
      width: 'shortRail.shoulders + 2 * leg.thickness + 2 * overhang.sides',
      thickness: writeExact(topThickness), stock: writeExact(input['stock.top']),
    },
    made: { kind: 'panel', boards }, referenceFace: 'underside', referenceEdge: 'front edge', easing: '1/8 in',
  };
}

function buttonOf(input: StarterInput, { buttons }: Proportions): Part {
  return {
    id: 'button', name: 'button', count: 2 * (buttons.long + buttons.short), species: input.species,
    sizes: { length: '2 1/4 in', width: '1 1/4 in', thickness: 'longRailButtons.step + longRailButtons.tongueThickness' },
    made: { kind: 'solid' }, referenceFace: 'top face',
  };
}
