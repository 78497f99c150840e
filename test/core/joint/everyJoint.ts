import type { MortiseAndTenon, Part, PieceFile, SizeSource } from '../../../core/piece/file.ts';
import { writePiece } from '../../../core/piece/load.ts';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';
import { pieceOf } from '../piece/builder.ts';
import { loadSound } from '../piece/demo.ts';

/** A writing table with a drawer, and a looking glass in a frame beside it: every joint that a piece file can carry. */
export function everyJoint(change: (joint: MortiseAndTenon) => MortiseAndTenon = (joint) => joint): LoadedPiece {
  return loadSound(writePiece(everyJointFile(change)));
}

export function everyJointFile(change: (joint: MortiseAndTenon) => MortiseAndTenon = (joint) => joint): PieceFile {
  return { ...pieceOf(PARTS, {}, { tools: { chisels: ['1/4 in', '3/8 in', '1/2 in'], clamps: [] } }), joints: JOINTS.map(change) };
}

const PLACES = ['front left', 'front right', 'back left', 'back right'];

function part(id: string, name: string, count: number, sizes: Readonly<Record<string, SizeSource>> & Pick<Part['sizes'], 'length'>, places?: readonly string[]): Part {
  return { id, name, count, species: 'white oak', sizes: { width: '2 in', thickness: '1 in', ...sizes }, made: { kind: 'solid' }, referenceFace: 'outside face', referenceEdge: 'top edge', ...(places ? { places } : {}) };
}

const PARTS: readonly Part[] = [
  part('leg', 'leg', 4, { length: '29 in', width: '2 1/4 in', thickness: '2 1/4 in' }, PLACES),
  part('apron', 'apron', 1, { shoulders: '40 in', length: 'apron.shoulders + 2 * apronTenon.tenonLength', width: '8 in' }),
  part('sideRail', 'side rail', 2, { shoulders: '20 in', length: 'sideRail.shoulders + 2 * sideRailTenon.tenonLength', width: '5 in' }),
  part('drawerRail', 'drawer rail', 1, { shoulders: '40 in', length: 'drawerRail.shoulders + 2 * drawerRailTenon.tenonLength', width: '1 3/4 in', thickness: '3/4 in' }),
  part('footRail', 'foot rail', 1, { shoulders: '40 in', length: 'footRail.shoulders + 2 * leg.width' }),
  part('stile', 'stile', 2, { length: '20 in', thickness: '3/4 in', horn: '3/4 in', lowerHorn: '3/4 in' }),
  part('topFrame', 'top frame', 1, { shoulders: '10 in', length: 'topFrame.shoulders + 2 * stile.width', thickness: '3/4 in' }),
];

function joint(id: string, name: string, tenonOn: string, sizes: Readonly<Record<string, SizeSource>>, more: Partial<MortiseAndTenon> = {}): MortiseAndTenon {
  return {
    kind: 'mortise and tenon', id, name, tenonOn, mortiseIn: 'leg', mortiseInto: 'width', ...more,
    sizes: {
      tenonLength: '1 1/2 in', tenonThickness: `${id}.mortiseWidth`, mortiseWidth: '3/8 in', mortiseDepth: `${id}.tenonLength + 1/16 in`,
      mortiseLength: `${id}.tenonWidth`, setback: '1/8 in', tenonWidth: `${tenonOn}.width - ${id}.topShoulder - 1/4 in`, fromTop: `${id}.topShoulder`, ...sizes,
    },
  };
}

const JOINTS: readonly MortiseAndTenon[] = [
  joint('apronTenon', 'apron tenon', 'apron', { topShoulder: '1 in', tenonWidth: '2 1/4 in', gap: '2 1/4 in' }, { tenons: 'one above the other', haunch: 'sloped', tenonEnds: 'mitred', places: ['back left', 'back right'] }),
  joint('sideRailTenon', 'side rail tenon', 'sideRail', { topShoulder: '1 in' }, { mortiseInto: 'thickness', haunch: 'square', tenonEnds: 'mitred' }),
  joint('drawerRailTenon', 'drawer rail tenon', 'drawerRail', {
    mortiseWidth: '1/4 in', tenonLength: '5/8 in', outerShoulder: '3/8 in', gap: '1/2 in', topShoulder: '1/8 in', tenonWidth: '1/2 in', fromTop: '5 in + drawerRailTenon.topShoulder',
  }, { tenons: 'side by side', lies: 'flat', places: ['front left', 'front right'] }),
  joint('footRailTenon', 'foot rail tenon', 'footRail', { topShoulder: '1/4 in', tenonLength: 'leg.width', mortiseDepth: 'leg.width', fromTop: '23 in', setback: '5/8 in' }, { shape: 'through', places: ['back left', 'back right'] }),
  joint('cornerBridle', 'corner bridle', 'topFrame', {
    mortiseWidth: '1/4 in', tenonLength: 'stile.width', mortiseDepth: 'stile.width', tenonWidth: 'topFrame.width', mortiseLength: 'topFrame.width', fromTop: '0 in', setback: '0 in',
  }, { mortiseIn: 'stile', shape: 'bridle' }),
];
