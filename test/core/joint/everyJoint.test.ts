import { describe, expect, it } from 'vitest';
import { marksFor, type Mark } from '../../../core/joint/marks.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { misfits, renderSentence } from '../../../core/piece/fits.ts';
import { loadPiece, writePiece } from '../../../core/piece/load.ts';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';
import { writeExact } from '../../../core/piece/writeExact.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { renderWording } from '../../../core/work/wording.ts';
import { Session } from '../respond/session.ts';
import { everyJoint, everyJointFile } from './everyJoint.ts';

const PIECE = everyJoint();
const SIZES = evaluate(PIECE, []);

function lines(part: string, joint: string | undefined, piece: LoadedPiece = PIECE): readonly string[] {
  return marksFor(piece, evaluate(piece, []), part).filter((mark) => mark.joint === joint).map(line);
}

function line({ say, at, from }: Mark): string {
  return `${say}, ${writeExact(at)} from ${from.say}`;
}

function told(piece: LoadedPiece): readonly string[] {
  const sizes = evaluate(piece, []);
  return misfits(piece, []).map(({ severity, say }) => `${severity}: ${renderSentence(say, ({ size, copy }) => sizeOf(sizes, size, copy)?.length, writeExact)}`);
}

function asked(words: string): string {
  const session = new Session();
  session.request({ kind: 'load piece', text: writePiece(everyJointFile()), from: 'the test' });
  return session.hearOut(words);
}

describe('a piece with every joint', () => {
  it('goes together as it is planned', () => {
    expect(told(PIECE)).toEqual([]);
  });

  it('of twins one above the other, both mortises are marked from the top end, and the socket of the haunch', () => {
    // The first an inch down and 2 1/4 long, the second the gap of 2 1/4 below it: 5 1/2.
    expect(lines('leg', 'apronTenon')).toEqual([
      'start of the upper mortise, 1 in from the top end', 'end of the upper mortise, 3 1/4 in from the top end', 'near side of the upper mortise, 7/16 in from the outer face', 'far side of the upper mortise, 13/16 in from the outer face', 'depth of the upper mortise, 1 9/16 in from the face that is chopped',
      'start of the lower mortise, 5 1/2 in from the top end', 'end of the lower mortise, 7 3/4 in from the top end', 'near side of the lower mortise, 7/16 in from the outer face', 'far side of the lower mortise, 13/16 in from the outer face', 'depth of the lower mortise, 1 9/16 in from the face that is chopped',
      'depth of the haunch socket, where it meets the mortise, 3/8 in from the face that is chopped',
    ]);
  });

  it('of twins side by side, both are gauged from the outer face', () => {
    // Setback 1/8 and outer shoulder 3/8; the second a tenon and a gap, 3/4, further in.
    expect(lines('leg', 'drawerRailTenon').filter((each) => each.includes('side of'))).toEqual([
      'near side of the outer mortise, 1/2 in from the outer face', 'far side of the outer mortise, 3/4 in from the outer face', 'near side of the inner mortise, 1 1/4 in from the outer face', 'far side of the inner mortise, 1 1/2 in from the outer face',
    ]);
    expect(lines('drawerRail', 'drawerRailTenon')).toContain('outer cheek of the inner tenon, 1 1/8 in from the top edge');
    expect(lines('drawerRail', 'drawerRailTenon')).toContain('top of the inner tenon, 1/8 in from the outside face');
  });

  it('a through mortise is marked on both faces and has no depth; a bridle only at its bottom, its sides gauged round', () => {
    const through = marksFor(PIECE, SIZES, 'leg').filter(({ joint }) => joint === 'footRailTenon');
    expect(through.map(({ kind }) => kind)).toEqual(['mortise start', 'mortise end', 'mortise near side', 'mortise far side']);
    expect(through[0]?.on).toBe('the face towards the foot rail, and the far one');
    expect(lines('stile', 'cornerBridle')).toEqual(['bottom of the slot, 2 in from the line of the top end, under the horn', 'near side of the slot, 1/4 in from the outer face', 'far side of the slot, 1/2 in from the outer face']);
    expect(lines('topFrame', 'cornerBridle').some((each) => each.includes('top of the tenon'))).toBe(false);
  });

  it('a horn is left on the rough length, and the finished end is knifed', () => {
    expect(sizeOf(SIZES, 'stile.roughLength')?.length).toBe(sizeOf(SIZES, 'stile.length')?.length === undefined ? undefined : (20 + 1.5 + 1) * 25_400_000);
    expect(lines('stile', undefined)).toEqual(['finished top end, 3/4 in from the rough top end', 'finished lower end, 3/4 in from the rough lower end']);
  });

  it('a mitred end is marked on its shorter cheek, and a haunch from the end of the tenon', () => {
    // The side rail's mortise has its near side 7/16 and its far side 13/16 from the outer face: 2 1/4 less 13/16 less the 1/16 of clearance is 1 3/8 on the inner cheek.
    expect(lines('sideRail', 'sideRailTenon')).toContain('mitre, on the inner cheek, 1/8 in from each end');
    expect(lines('sideRail', 'sideRailTenon')).toContain('end of the haunch, 1 1/8 in from each end');
  });

  it('stepped ends halve the height that they share, with the clearance between', () => {
    const stepped = everyJoint((joint) => (joint.tenonEnds === 'mitred' ? { ...joint, tenonEnds: 'stepped', sizes: { ...joint.sizes, tenonLength: '1 3/4 in' } } : joint));
    const marks = lines('sideRail', 'sideRailTenon', stepped);
    expect(marks.some((each) => each.startsWith('step of the tenon'))).toBe(true);
    expect(marks.some((each) => /^end of the (?:upper|lower), shorter half/.test(each))).toBe(true);
    expect(told(stepped).filter((each) => each.includes('hit'))).toEqual([]);
  });

  it('every mark lies inside its part', () => {
    for (const { id } of PIECE.file.parts) for (const mark of marksFor(PIECE, SIZES, id)) expect([line(mark), mark.at >= 0 && mark.at <= mark.within]).toEqual([line(mark), true]);
  });

  it('is told of in the steps that lay it out and cut it', () => {
    const shown = (id: string): string => {
      const step = stepsFor(PIECE).find((each) => each.id === id);
      return step ? renderWording([...step.say, ' ', ...step.show], ({ size }) => { const length = sizeOf(SIZES, size)?.length; return length === undefined ? size : writeExact(length); }) : 'no such step';
    };
    expect(shown('joint layout/leg/apronTenon')).toMatch(/The second mortise begins 2 1\/4 in below the first\..*socket of the haunch, 1 in high/);
    expect(shown('joint layout/leg/footRailTenon')).toMatch(/gauge the far face as well/);
    expect(shown('joint layout/stile/cornerBridle')).toMatch(/Mark out the slots.*open at the end.*knife line of the finished end/);
    expect(shown('chop mortises/leg/1/sideRailTenon')).toMatch(/Chop the socket of the haunch last, 3\/8 in deep/);
    expect(shown('chop mortises/stile/1/cornerBridle')).toMatch(/saw the slot.*2 in deep/);
    expect(shown('chop mortises/leg/back left/footRailTenon')).toMatch(/right through.*half from each face/);
    expect(shown('saw tenons/apron/1/apronTenon')).toMatch(/Saw the haunch back to 3\/8 in.*gap between the twins.*mitre/);
    expect(shown('ends/stile/1')).toMatch(/Leave the horns on, 3\/4 in, 3\/4 in: there, only knife the finished end/);
    expect(stepsFor(PIECE).some(({ operation, say }) => operation === 'level' && say.some((word) => typeof word === 'string' && word.includes('Saw the horns off')))).toBe(true);
  });

  it('answers by voice: both of twins, the slot, the haunch, and what the books say of each', () => {
    expect(asked('where does the apron mortise start')).toBe('Leg, apron mortise, upper one, start, one inch from the top end; lower one, start, five, and a half inches from the top end.');
    expect(asked('how do i cut the corner bridle')).toMatch(/^Top frame slot, two inches deep from the end.*Saw both cheeks/);
    expect(asked('how long is the side rail haunch')).toMatch(/three eighths of an inch/);
    expect(asked('what should the drawer rail tenon be')).toMatch(/nearest to a fifth.*gap between twins/);
    expect(asked('what should the corner bridle be')).toMatch(/slot depth two inches/);
    expect(asked('how do i chop the apron mortise')).toMatch(/The lower one likewise, from/);
  });
});

describe('a joint that cannot be', () => {
  const faults = (change: Parameters<typeof everyJointFile>[0]): readonly string[] => {
    const loaded = loadPiece(writePiece(everyJointFile(change)));
    return loaded.ok ? [] : loaded.fault.map(({ path, line: at, message }) => `${path} ${at > 0 ? '' : 'nowhere'}${message}`);
  };

  it('twins without a gap, a haunch without a top shoulder, a haunch at a bridle, and mitred ends that go through, are told with their place', () => {
    expect(faults((joint) => (joint.id === 'apronTenon' ? { ...joint, sizes: Object.fromEntries(Object.entries(joint.sizes).filter(([key]) => key !== 'gap')) } : joint)))
      .toEqual(['$.joints[0].tenons Twin tenons have a gap between them: add its size, such as "gap": "1 in".']);
    expect(faults((joint) => (joint.id === 'cornerBridle' ? { ...joint, haunch: 'square', sizes: { ...joint.sizes, topShoulder: '1 in' } } : joint))).toEqual(['$.joints[4].haunch A bridle is as wide as its rail: leave the haunch out, or the shape.']);
    expect(faults((joint) => (joint.id === 'footRailTenon' ? { ...joint, tenonEnds: 'mitred' } : joint))).toEqual(['$.joints[3].tenonEnds Only blind tenons meet inside a leg: leave out one of the two.']);
  });

  it('is told in a sentence before any wood is cut', () => {
    const with_ = (id: string, sizes: Readonly<Record<string, string>>): readonly string[] => told(everyJoint((joint) => (joint.id === id ? { ...joint, sizes: { ...joint.sizes, ...sizes } } : joint)));
    expect(with_('drawerRailTenon', { gap: '1/16 in' })).toEqual(['weak: The two mortises for the drawer rail tenon leave only 1/16 in between them. Widen the gap between the tenons.']);
    expect(with_('sideRailTenon', { haunchLength: '2 in' }).join()).toContain('The haunch of the side rail tenon is as long as the tenon');
    expect(with_('footRailTenon', { mortiseDepth: '1 1/2 in' })).toEqual([expect.stringContaining('is to go through the leg, and is only 1 1/2 in deep of 2 1/4 in')]);
    // 2 1/4 less 7/16 less 1/16 leaves 1 3/4 on the outer cheek.
    expect(with_('sideRailTenon', { tenonLength: '1 7/8 in' }).join()).toContain('it is 1/8 in too long. At the longest it may be 1 3/4 in');
  });
});
