import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACES, type Turn } from '../../../../core/faces/face.ts';
import { legMap } from '../../../../core/faces/map.ts';
import type { FaceView, ViewLine } from '../../../../core/layout/paper/faceView.ts';
import { facesOf, type Laid } from '../../../../core/layout/paper/faces.ts';
import { sheetsFor } from '../../../../core/layout/paper/order.ts';
import { evaluate } from '../../../../core/piece/evaluate.ts';
import type { LoadedPiece } from '../../../../core/piece/loadedPiece.ts';
import { facesAtStep } from '../../../../core/respond/stepFaces.ts';
import { stepsOf } from '../../../../core/respond/views.ts';
import { everyJoint } from '../../joint/everyJoint.ts';
import { Session } from '../../respond/session.ts';
import { DEMO, orderFor, TABLES } from './shop.ts';

const CORNERS = ['front left', 'front right', 'back left', 'back right'] as const;
const MIRRORED = [['front left', 'front right'], ['back left', 'back right']] as const;
const turns: fc.Arbitrary<Turn> = fc.record({ front: fc.constantFrom(...FACES), up: fc.constantFrom('numbered' as const, 'other' as const) });

function laid(piece: LoadedPiece, stand: readonly { readonly place: string; readonly turn?: Turn }[], part = 'leg'): Laid {
  return {
    piece, sizes: evaluate(piece, []), places: new Map(stand.map(({ place }, index) => [`${part}/${index + 1}`, place])),
    turns: new Map(stand.flatMap(({ turn }, index) => (turn === undefined ? [] : [[`${part}/${index + 1}`, turn] as const]))),
  };
}

function facesOfCopy(from: Laid, copy: number, part = 'leg'): readonly FaceView[] {
  const found = facesOf(from, part, copy);
  if (!found.ok) throw new Error(found.fault);
  return found.value;
}

const isMortised = ({ name }: FaceView): boolean => /^face /.test(name);
const inPlace = ({ mark, lies, at, from, to }: ViewLine): unknown => [mark.joint, mark.which, mark.kind, lies, at, from, to];

/** The same face as the mirror image of the piece has it: what is up comes down. */
function mirrorOf(view: FaceView): unknown {
  const over = (line: ViewLine): ViewLine => (line.lies === 'along' ? { ...line, at: (view.across - line.at) as ViewLine['at'] } : line);
  return { lines: view.lines.map(over).map(inPlace), waste: view.waste.map(({ from, to, top, bottom }) => [from, to, view.across - bottom, view.across - top]), gaugeFrom: view.gaugeFrom === 'top' ? 'bottom' : 'top' };
}

function asDrawn(view: FaceView): unknown {
  return { lines: view.lines.map(inPlace), waste: view.waste.map(({ from, to, top, bottom }) => [from, to, top, bottom]), gaugeFrom: view.gaugeFrom };
}

/** The mortised faces by the joints that they bear, whatever their letters. */
function byJoints(views: readonly FaceView[]): ReadonlyMap<string, FaceView> {
  return new Map(views.filter(isMortised).map((view) => [[...new Set(view.lines.flatMap(({ mark }) => mark.joint ?? []))].sort().join(), view]));
}

describe('the layout of one leg', () => {
  it('mirror-image legs have mirror-image drawings, whichever way they are turned', () => {
    fc.assert(fc.property(TABLES, turns, turns, (piece, one, other) => {
      for (const [left, right] of MIRRORED) {
        const from = laid(piece, [{ place: left, turn: one }, { place: right, turn: other }]);
        const [views, mirrored] = [byJoints(facesOfCopy(from, 1)), byJoints(facesOfCopy(from, 2))];
        expect([...views.keys()].sort()).toEqual([...mirrored.keys()].sort());
        for (const [joints, view] of views) expect(asDrawn(mirrored.get(joints) ?? view), joints).toEqual(mirrorOf(view));
      }
    }), { numRuns: 12 });
  }, 60_000);

  it('bears every mortise in the face that its own map has, gauged from the face that its map says', () => {
    fc.assert(fc.property(fc.constantFrom(...CORNERS), turns, (place, turn) => {
      const part = DEMO.file.parts.find(({ id }) => id === 'leg');
      if (part === undefined) throw new Error('the demo piece has legs');
      const map = legMap(DEMO.file, part, place, turn);
      const views = facesOfCopy(laid(DEMO, [{ place, turn }]), 1).filter(isMortised);
      expect(views.flatMap(({ face }) => face ?? []).sort()).toEqual(map.mortised);
      for (const { joint, face, gaugeFrom } of map.mortises) {
        const view = views.find((one) => one.face === face);
        expect(view?.lines.some(({ mark }) => mark.joint === joint), joint).toBe(true);
        const edge = view?.gaugeFrom === 'top' ? view.topIs : view?.bottomIs;
        expect(edge).toBe(`face ${gaugeFrom ?? ''}, outer`);
      }
    }));
  });

  it('has every line exactly as far from its reference as the mark says', () => {
    fc.assert(fc.property(TABLES, fc.constantFrom(...CORNERS), turns, (piece, place, turn) => {
      for (const view of facesOfCopy(laid(piece, [{ place, turn }]), 1).filter(isMortised)) {
        for (const { mark, lies, at } of view.lines) {
          const from = lies === 'along' ? (view.gaugeFrom === 'top' ? at : view.across - at) : /bottom/.test(mark.from.say) ? view.along - at : at;
          expect(from, mark.say).toBe(mark.at);
        }
      }
    }), { numRuns: 12 });
  }, 60_000);

  // A leg at the front left: seen from the right, where the long rail comes from, its front is on the left, and so below when its top lies to the left.
  it('at the front left has the outer face below where the long rail comes in, at the front right above', () => {
    const from = laid(DEMO, [{ place: 'front left', turn: { front: 'A', up: 'numbered' } }, { place: 'front right', turn: { front: 'A', up: 'numbered' } }]);
    expect(facesOfCopy(from, 1)[0]).toMatchObject({ name: 'face D, towards the long rail', topIs: 'face C, inner', bottomIs: 'face A, outer', gaugeFrom: 'bottom', note: 'mirrored on leg 2' });
    expect(facesOfCopy(from, 2)[0]).toMatchObject({ name: 'face B, towards the long rail', topIs: 'face A, outer', bottomIs: 'face C, inner', gaugeFrom: 'top' });
  });

  it('while it is not told which way it is turned, is of the right hand and without letters', () => {
    const [view] = facesOfCopy(laid(DEMO, [{ place: 'front left' }]), 1);
    expect(view).toMatchObject({ name: 'face to the right, towards the long rail', topIs: 'inner face', bottomIs: 'outer face', gaugeFrom: 'bottom' });
  });

  it('of no leg in particular says where it is mirrored', () => {
    const all = facesOf(orderFor(DEMO), 'leg');
    expect(all.ok ? all.value[0]?.note : '').toBe('as at front right, back left; mirrored at front left, back right');
  });

  it('calls the faces on the sheet as the steps and the talk do', () => {
    const session = Session.withDemo();
    CORNERS.forEach((place, index) => session.say(`leg ${['one', 'two', 'three', 'four'][index] ?? ''} goes ${place}, face ${FACES[index] ?? 'A'} to the front`));
    const { state } = session.bench;
    for (const copy of [1, 2, 3, 4]) {
      const set = sheetsFor({ ...orderFor(DEMO), places: state.places, turns: state.turns }, { what: 'layout', part: 'leg', copy });
      const words = set.ok ? set.value.pages.flatMap(({ drawn }) => drawn.flatMap((item) => (item.kind === 'words' ? [item.text] : []))).join('\n') : '';
      const told = session.say(`where do the mortises go on leg ${['one', 'two', 'three', 'four'][copy - 1] ?? ''}`);
      const step = stepsOf(state).find(({ operation, part, copy: one, joint }) => operation === 'chop mortises' && part === 'leg' && joint === 'longRailTenon' && one === copy);
      const face = /face ([A-D])/.exec(step === undefined ? '' : facesAtStep(state, step))?.[1] ?? 'none';
      expect(told).toContain(`Long rail mortise, in face ${face}`);
      expect(words).toContain(`leg ${copy}, ${CORNERS[copy - 1] ?? ''}, face ${face}, towards the long rail`);
    }
  });
});

describe('the layout of other parts', () => {
  it('of a rail that lies has its letters, and the numbered end where it lies', () => {
    const lies = (up: Turn['up']): readonly FaceView[] => facesOfCopy(laid(DEMO, [{ place: 'front', turn: { front: 'A', up } }], 'longRail'), 1, 'longRail');
    expect(lies('numbered').map(({ name, leftIs }) => [name, leftIs])).toEqual([['outside face, A', 'numbered end'], ['top edge, D', 'end without number'], ['inside face, C', 'one end']]);
    expect(lies('other')[0]).toMatchObject({ name: 'outside face, A', leftIs: 'end without number' });
  });

  it('of a bridle has its slot open at the end, on the end too, and a tenon with two shoulders', () => {
    const piece = everyJoint();
    const whole = facesOf({ ...laid(piece, []) }, 'topFrame');
    const [face, edge] = whole.ok ? whole.value : [];
    const shoulders = (view: FaceView | undefined): readonly ViewLine[] => (view?.lines ?? []).filter(({ mark }) => mark.kind === 'first shoulder');
    expect(shoulders(face).map(({ from, to }) => [from, to])).toEqual([[0, face?.across]]);
    // 3/4 in thick with a tenon of 1/4 in: the shoulders are a quarter of an inch on each face, 6.35 mm.
    expect(shoulders(edge).map(({ from, to }) => [from, to])).toEqual([[0, 6_350_000], [12_700_000, 19_050_000]]);
    const set = sheetsFor({ ...orderFor(piece) }, { what: 'layout', part: 'topFrame' });
    const labels = set.ok ? set.value.pages[0]?.drawn.flatMap((item) => (item.kind === 'words' && item.text.includes('first shoulder') ? [item.text] : [])) : [];
    expect(labels).toHaveLength(2);
    expect(edge?.waste.map(({ top, bottom }) => [top, bottom])).toEqual([[0, 6_350_000], [12_700_000, 19_050_000], [0, 6_350_000], [12_700_000, 19_050_000]]);
  });
});
