import { expect, test } from 'vitest';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { renderWording } from '../../../core/work/wording.ts';
import { bakersTable, cleatedLid, frame, panelOnly, slattedEnds, squareStool, threeLegs } from './pieces.ts';

/** Each glue-up of the piece with what goes into it, as 'end frame 1 of 2: leg 1, leg 2, …'. */
function glueUps(of: LoadedPiece): readonly string[] {
  return stepsFor(of).filter(({ operation }) => operation === 'glue-up')
    .map(({ title, covers }) => `${title.replace('Glue-up, ', '')}: ${covers.map(({ part, copy }) => `${part} ${copy}`).join(', ')}`);
}

test('a table is glued as two end frames first, each with the rails of its short side, then with all that is long', () => {
  expect(glueUps(bakersTable())).toEqual([
    'left end frame: leg 1, leg 3, shortRail 1, sideStretcher 1',
    'right end frame: leg 2, leg 4, shortRail 2, sideStretcher 2',
    'frame: leg 1, leg 2, leg 3, leg 4, longRail 1, longRail 2, shortRail 1, shortRail 2, sideStretcher 1, sideStretcher 2, backStretcher 1',
  ]);
});

test('how many tenons must go home before the glue grabs is said for each glue-up', () => {
  const said = stepsFor(bakersTable()).filter(({ operation }) => operation === 'glue-up').map(({ say }) => renderWording(say, () => ''));
  expect(said.map((sentence) => /: (\w+) tenons?/.exec(sentence)?.[1])).toEqual(['four', 'four', 'six']);
});

test('the end frames are tried dry with the long rails before these are glued', () => {
  const steps = stepsFor(bakersTable());
  const last = steps.find(({ id }) => id === 'glue-up/piece');
  expect(last?.after.filter(({ gate }) => gate).map(({ step }) => step)).toEqual(['dry assembly/piece.framed']);
});

test('a square stool with one kind of rail puts two of the four into its end frames', () => {
  expect(glueUps(squareStool()).slice(0, 2)).toEqual(['end frame 1 of 2: leg 1, leg 2, rail 1', 'end frame 2 of 2: leg 3, leg 4, rail 2']);
});

test('three legs make no end frames: one glue-up', () => {
  expect(glueUps(threeLegs())).toEqual(['frame: leg 1, leg 2, leg 3, rail 1, rail 2, rail 3']);
});

test('two stiles and two rails are glued at once, and planed flush instead of levelled on feet', () => {
  expect(glueUps(frame())).toHaveLength(1);
  expect(renderWording(stepsFor(frame()).find(({ operation }) => operation === 'level')?.say ?? [], () => '')).toBe('Plane the joints of the frame flush.');
});

test('slats go into their end frame, for they cannot go in afterwards; what spans the frames waits', () => {
  const [first = '', , last = ''] = glueUps(slattedEnds());
  expect(first).toContain('slat 5');
  expect(first).not.toContain('slat 6');
  expect(first).not.toContain('shelfRail');
  expect(last).toContain('shelfRail 1');
});

test('parts that no joint connects are glued apart', () => {
  expect(glueUps(cleatedLid())).toHaveLength(2);
});

test('a panel with tenons on it is glued before its joints are laid out; a loose top is not waited for', () => {
  const early = stepsFor(cleatedLid()).map(({ id }) => id);
  expect(early.indexOf('panel glue-up/lid/1')).toBeLessThan(early.findIndex((id) => id.startsWith('joint layout/lid')));
  const late = stepsFor(bakersTable()).map(({ id }) => id);
  expect(late.indexOf('panel glue-up/top/1')).toBeGreaterThan(late.indexOf('fit/backStretcher/1/backStretcherTenon'));
  expect(late.indexOf('true again/top/1')).toBeGreaterThan(late.indexOf('glue-up/endFrame.1'));
});

test('a piece without joints has no assembly and nothing to level', () => {
  expect(stepsFor(panelOnly()).map(({ operation }) => operation)).toEqual([
    'rough crosscut', 'reference edge', 'rip', 'rest', 'face', 'edge', 'dry check', 'panel glue-up', 'scrape squeeze-out', 'true again',
    'thickness', 'width', 'ends', 'orient and mark', 'ease edges', 'finish', 'finish',
  ]);
});
