import { expect } from '@open-wc/testing';
import type { Mark } from '../../../core/joint/marks.ts';
import type { FaceView } from '../../../core/layout/paper/faceView.ts';
import { facesOf, type Laid } from '../../../core/layout/paper/faces.ts';
import type { Length } from '../../../core/length/length.ts';
import { evaluate } from '../../../core/piece/evaluate.ts';
import { layFace } from '../../../kiosk/draw/faceLayout.ts';
import type { FaceLayout } from '../../../kiosk/draw/faceLayout.ts';
import { setFigure } from '../../../kiosk/draw/figure.ts';
import { PIECE } from '../sampleViews.ts';

const [WIDTH, HEIGHT, LETTER] = [784, 262, 27];
const widthOf = (length: Length, letter: number): number => setFigure(length, { unit: 'inch', denominator: 32 }, letter).width;
const laidOut = (view: FaceView): FaceLayout => layFace(view, WIDTH, HEIGHT, LETTER, widthOf);
const LAID: Laid = {
  piece: PIECE, sizes: evaluate(PIECE, []),
  places: new Map([['leg/1', 'front left'], ['leg/2', 'front right'], ['leg/3', 'back left'], ['leg/4', 'back right']]),
  turns: new Map(['leg/1', 'leg/2', 'leg/3', 'leg/4'].map((leg) => [leg, { front: 'A', up: 'numbered' }])),
};

function faces(part: string, copy?: number): readonly FaceView[] {
  const found = facesOf(LAID, part, copy);
  if (!found.ok) throw new Error(found.fault);
  return found.value;
}

const ALL = [...[1, 2, 3, 4].map((copy) => ({ said: `leg ${copy}`, views: faces('leg', copy) })), ...PIECE.file.parts.filter(({ id }) => facesOf(LAID, id).ok).map(({ id, name }) => ({ said: name, views: faces(id) }))];

describe('a face on the screen', () => {
  for (const { said, views } of ALL) {
    it(`of the ${said} has every distance from its edge true, and those along it in their order, true as far as nothing is broken out`, () => {
      for (const view of views) {
        const { scale, face, lines, breaks } = laidOut(view);
        const firstBreak = Math.min(face.x + face.width, ...breaks);
        for (const { of: { mark, lies, at }, line } of lines) {
          if (lies === 'along') {
            const fromEdge = view.gaugeFrom === 'top' ? line.y1 - face.y : face.y + face.height - line.y1;
            expect(fromEdge / scale, `${view.name}, ${mark.say}`).to.be.closeTo(mark.at, 1);
          } else if (line.x1 < firstBreak) expect((line.x1 - face.x) / scale, `${view.name}, ${mark.say}`).to.be.closeTo(at, 1);
        }
        const along = lines.filter(({ of }) => of.lies === 'across').sort((one, other) => one.of.at - other.of.at);
        along.slice(1).forEach(({ of, line }, index) => { if (of.at > (along[index]?.of.at ?? of.at)) expect(line.x1, of.mark.say).to.be.greaterThan(along[index]?.line.x1 ?? 0); });
      }
    });

    it(`of the ${said} has a figure for every mark, inside the drawing and clear of each other`, () => {
      for (const view of views) {
        const { along, across, face } = laidOut(view);
        // Twins in one line share their figures; no distance is without one.
        const told = (marks: readonly Mark[]): readonly string[] => [...new Set(marks.map(({ joint, kind, at }) => `${joint ?? ''}/${kind}/${at}`))].sort();
        expect(told([...along, ...across].map(({ of: { mark } }) => mark)), view.name).to.deep.equal(told(view.lines.map(({ mark }) => mark)));
        for (const { of, figure, letter } of along) {
          expect(figure.x - widthOf(of.mark.at, letter) / 2, view.name).to.be.at.least(0);
          expect(figure.x + widthOf(of.mark.at, letter) / 2, view.name).to.be.at.most(WIDTH);
          expect(figure.y + letter * 1.2, view.name).to.be.at.most(HEIGHT);
        }
        for (const list of [along, across]) {
          list.forEach((one, index) => {
            for (const other of list.slice(index + 1)) {
              const clear = Math.abs(one.figure.x - other.figure.x) >= (widthOf(one.of.mark.at, 27) + widthOf(other.of.mark.at, 27)) / 2 || Math.abs(one.figure.y - other.figure.y) >= 18;
              expect(clear, `${view.name}: ${one.of.mark.say} and ${other.of.mark.say}`).to.equal(true);
            }
          });
        }
        expect(face.x >= 0 && face.x + face.width <= WIDTH && face.y >= 0 && face.y + face.height <= HEIGHT, view.name).to.equal(true);
      }
    });
  }

  it('of the front left leg is the mirror image of that of the front right one', () => {
    const drawn = (copy: number): readonly (readonly number[])[] => {
      const [view] = faces('leg', copy);
      if (view === undefined) throw new Error('a leg has a face with mortises');
      const { face, waste } = laidOut(view);
      return waste.map(({ x, y, width, height }) => (copy === 1 ? [x, face.y + face.height - y - height, width, height] : [x, y - face.y, width, height]).map((each) => Math.round(each * 1e6)));
    };
    expect(drawn(1)).to.deep.equal(drawn(2));
  });
});
