import type { Fixing, Joint, MortiseAndTenon } from '../file.ts';
import { writeExact } from '../writeExact.ts';
import type { StarterInput } from './fields.ts';
import { longStretchers } from './parts.ts';
import type { Proportions } from './proportions.ts';

/** Where the tenons of one rail go, from its top edge and from the top end of the leg. */
interface Tenoning {
  readonly topShoulder: string;
  readonly bottomShoulder: string;
  readonly fromTop: string;
  readonly into: 'width' | 'thickness';
  readonly places?: readonly string[];
  readonly haunch?: 'square';
}

export function jointsOf(input: StarterInput, sizes: Proportions): readonly Joint[] {
  // A rail that is level with the end of its leg would twist without a haunch.
  const rail = { topShoulder: writeExact(sizes.topShoulder), bottomShoulder: '1/4 in', haunch: 'square' } as const;
  const stretcher = { topShoulder: '3/8 in', bottomShoulder: '3/8 in' };
  const long = longStretchers(input);
  const back = long.length === 1 ? { places: ['back left', 'back right'] } : {};
  return [
    tenonOf('longRail', 'long rail tenon', sizes, { ...rail, into: 'width', fromTop: 'longRailTenon.topShoulder' }),
    tenonOf('shortRail', 'short rail tenon', sizes, { ...rail, into: 'thickness', fromTop: 'shortRailTenon.topShoulder' }),
    ...(input.stretchers === 'none' ? [] : [
      tenonOf('sideStretcher', 'side stretcher tenon', sizes, { ...stretcher, into: 'thickness', fromTop: fromTop('sideStretcher', 'stretcher.height') }),
    ]),
    ...(long.length === 0 ? [] : [
      tenonOf('longStretcher', 'long stretcher tenon', sizes, { ...stretcher, into: 'width', ...back, fromTop: fromTop('longStretcher', 'stretcher.longHeight') }),
    ]),
    buttonsOf('longRail', 'long rail button', 2 * sizes.buttons.long, sizes),
    buttonsOf('shortRail', 'short rail button', 2 * sizes.buttons.short, sizes),
  ];
}

/** From the height of a stretcher's underside over the floor. */
function fromTop(id: string, height: string): string {
  return `leg.length - ${height} - ${id}.width + ${id}Tenon.topShoulder`;
}

function tenonOf(part: string, name: string, { tenonLength, mortise }: Proportions, { topShoulder, bottomShoulder, fromTop, into, places, haunch }: Tenoning): MortiseAndTenon {
  const id = `${part}Tenon`;
  return {
    kind: 'mortise and tenon', id, name, tenonOn: part, mortiseIn: 'leg', mortiseInto: into, ...(places === undefined ? {} : { places }), ...(haunch === undefined ? {} : { haunch }),
    sizes: {
      tenonLength: writeExact(tenonLength),
      tenonThickness: `${id}.mortiseWidth`,
      tenonWidth: `${part}.width - ${id}.topShoulder - ${id}.bottomShoulder`,
      topShoulder, bottomShoulder,
      outerShoulder: `(${part}.thickness - ${id}.tenonThickness) / 2`,
      mortiseDepth: `${id}.tenonLength + mortise.clearance`,
      mortiseWidth: 'mortise.width',
      mortiseLength: `${id}.tenonWidth`,
      setback: 'rail.setback',
      fromTop: { is: fromTop, critical: true },
      // As long as the tenon is thick, unless that is all of a short one.
      ...(haunch !== undefined && mortise >= tenonLength ? { haunchLength: `${id}.tenonLength / 2` } : {}),
    },
  };
}

/** A button's step is a thirty-second less than the groove stands below the edge, so that it draws the top down. */
function buttonsOf(part: string, name: string, count: number, { groove }: Proportions): Fixing {
  const id = `${part}Buttons`;
  const own = part === 'longRail';
  const same = (key: string): string => `longRailButtons.${key}`;
  return {
    kind: 'fixing', id, name, holds: 'top', to: part, with: 'button', count,
    sizes: {
      grooveFromTop: own ? writeExact(groove.fromTop) : same('grooveFromTop'),
      grooveWidth: own ? writeExact(groove.width) : same('grooveWidth'),
      grooveDepth: own ? writeExact(groove.depth) : same('grooveDepth'),
      step: own ? 'longRailButtons.grooveFromTop - 1/32 in' : same('step'),
      tongueThickness: own ? 'longRailButtons.grooveWidth - 1/32 in' : same('tongueThickness'),
      tongueLength: own ? 'longRailButtons.grooveDepth - 1/16 in' : same('tongueLength'),
    },
  };
}
