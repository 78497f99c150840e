import { beforeEach, describe, expect, it } from 'vitest';
import { NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import { craftOf } from '../../../core/respond/evening.ts';
import { parseHeard } from '../../../core/talk/doubt.ts';
import { Session } from './session.ts';

let session: Session;
beforeEach(() => { session = Session.withDemo(); });
const inches = (count: number): number => Math.round(count * NANOMETRES_PER_INCH);
const taken = (key: string) => (craftOf(session.bench.state).surfaces.get(key) ?? []).map(({ what, fromEnd, gap }) => [what, fromEnd / NANOMETRES_PER_INCH, gap / NANOMETRES_PER_INCH]);
const asked = () => session.bench.conversation.question;

/** Says each, and returns what the bench said to the last. */
const say = (...all: readonly string[]): string => all.map((words) => session.say(words)).at(-1) ?? '';

describe('readings that the guide asks for', () => {
  it('are taken one after the other, read back, and written down each by itself', () => {
    expect(say('read long rail one')).toBe('Long rail one, reference face. Near stick near the marked end, far stick near the far end: which end of it is high, and by how much?');
    expect(say('left high one sixteenth')).toMatch(/^Left end high by one sixteenth of an inch, near the far end\. Near stick .* far stick in the middle/);
    expect(session.entries).toHaveLength(1);
    expect(say('right end high by one sixty fourth')).toMatch(/^Right end high by one sixty-fourth of an inch, in the middle\. Straightedge along the middle: what gap near the marked end\?$/);
    expect(taken('longRail/1//face')).toEqual([['sticks', 49.5, 1 / 16], ['sticks', 25.5, -1 / 64]]);
  });

  it('ask which way a bare size goes, and take nothing down before', () => {
    say('read long rail one');
    expect(say('one thirty second')).toBe('One thirty-second of an inch. Left end high, or right end high?');
    expect(session.entries).toEqual([]);
    say('right end high');
    expect(taken('longRail/1//face')).toEqual([['sticks', 49.5, -1 / 32]]);
  });

  it('may be told in two breaths, the way first', () => {
    say('read long rail one');
    expect(say('right end high')).toBe('Right end high; by how much?');
    say('one sixty fourth');
    expect(taken('longRail/1//face')).toEqual([['sticks', 49.5, -1 / 64]]);
    expect(say('hollow')).toBe('Left end high, or right end high?');
    expect(asked()).toMatchObject({ kind: 'surface reading', what: 'sticks' });
  });

  it('are asked about when a number was not clearly heard', () => {
    say('read long rail one', 'no gap', 'no gap');
    expect(parseHeard('fifteen thousandths', ['fifteen'], session.bench)).toEqual({ kind: 'which', choices: [
      { say: 'fifteen', request: { kind: 'answer length', length: inches(0.015) } }, { say: 'fifty', request: { kind: 'answer length', length: inches(0.05) } }] });
  });

  it('end with what they come to, and leave out what cannot be read', () => {
    say('read long rail one', 'no gap', 'no gap', 'leave it out', 'nothing', 'one sixty fourth');
    expect(say('no gap', 'no gap', 'no gap', 'no gap', 'hollow ten thousandths', 'level', 'crowned one sixty fourth')).toMatch(/That is all but what was left out\. .* is allowed\.$/);
    expect(asked()).toBeNull();
    expect(session.bench.conversation.screen).toEqual({ name: 'truing', of: { part: 'longRail', copy: 1, face: 'face' } });
  });

  it('go on where they were left, and know what was read near by', () => {
    say('read long rail one', 'no gap', 'enough');
    expect(asked()).toBeNull();
    say('the gap at one and a half inches is five thousandths');
    expect(say('take the readings')).toMatch(/far stick in the middle/);
    expect(say('none')).toMatch(/what gap at nine inches\?$/);
  });

  it('are asked about when they are much, and when a crown lies under the straightedge', () => {
    say('read long rail one', 'no gap', 'no gap');
    expect(say('three eighths')).toBe('That is much: three eighths of an inch near the marked end. Is it really so?');
    expect(say('yes')).toMatch(/^A gap of three eighths/);
    expect(say('crowned one sixteenth')).toMatch(/^Let the straightedge rest on the crown/);
    expect(asked()).toMatchObject({ kind: 'surface reading', what: 'along' });
  });

  it('are typed by a caliper as well', () => {
    say('take the thickness of long rail two');
    expect(session.request({ kind: 'reading', text: '1.375 in' }).say).toMatch(/^One, and three eighths inches, near the marked end\. Thickness at nine inches\?$/);
    expect(taken('longRail/2//face')).toEqual([['thickness', 1, 1.375]]);
  });
});

describe('readings at a place of the maker’s own', () => {
  it('take the place of an earlier one there, and are taken back one by one', () => {
    say('read long rail one', 'enough', 'the gap at twelve inches is one sixteenth', 'the gap at twelve inches is one thirty second');
    expect(taken('longRail/1//face')).toEqual([['along', 12, 1 / 32]]);
    expect(say('scratch that')).toBe('Scratched: long rail one, reference face, a gap of one thirty-second of an inch, at twelve inches.');
    expect(taken('longRail/1//face')).toEqual([['along', 12, 1 / 16]]);
  });

  it('are refused beyond the end of the board', () => {
    say('read long rail one', 'enough');
    expect(say('the gap at eighty inches is one sixteenth')).toMatch(/^There is no such place: long rail one, reference face is fifty, and a half inches long\.$/);
    expect(session.entries).toEqual([]);
  });

  it('are kept for each copy, each layer and each side by itself', () => {
    say('read layer two of leg three', 'left high one eighth', 'enough', 'read the other face', 'right high one eighth', 'enough', 'read leg three layer three', 'no gap', 'enough');
    expect([...craftOf(session.bench.state).surfaces.keys()]).toEqual(['leg/3/2/face', 'leg/3/2/other face', 'leg/3/3/face']);
  });

  it('are forgotten once the face was planed', () => {
    say('read long rail one', 'left high one eighth', 'enough');
    expect(say('I planed it')).toBe('Long rail one, reference face is planed. Take the readings again, and see.');
    expect(taken('longRail/1//face')).toEqual([]);
    say('scratch that');
    expect(taken('longRail/1//face')).toHaveLength(1);
  });
});

describe('what the readings come to', () => {
  it('is wind in the board itself beside what the sticks show: 3.0 mm on sticks of 600 mm are 0.5 mm on 100 mm (trade facts D14, similar triangles)', () => {
    session.request({ kind: 'set', setting: { stick: inches(24) as never, rounding: { unit: 'millimetre', step: 100_000 as never } } });
    const { width } = sizeOfRail();
    say('read long rail one', 'left high three millimeters');
    const board = (3 * width) / 609.6;
    expect(say('is it flat')).toContain(`In wind: the far left corner is ${spokenTwentieths(board)} high in the board itself; the sticks show three millimetres.`);
  });

  it('is told in shavings of the thickness set, the high places first', () => {
    say('one shaving is four thousandths', 'read long rail one', 'no gap', 'no gap', 'no gap', 'sixteen thousandths', 'one thirty second', 'one thirty second', 'one thirty second', 'sixteen thousandths', 'no gap', 'no gap', 'no gap', 'no gap');
    const told = say('what do I plane');
    expect(told).toMatch(/^Eight shavings of four thousandths of an inch at the highest place\. First .* near the marked end; and near the far end\./);
    expect(say('is the face flat')).toMatch(/Along it is hollow by thirty-one thousandths of an inch/);
  });

  it('needs no planing when it is true enough for its purpose', () => {
    say('read long rail one', ...Array.from({ length: 12 }, () => 'no gap'));
    expect(say('what do I plane')).toBe('True enough: out by nothing, and sixteen thousandths of an inch is allowed. Nothing more to plane.');
  });

  it('allows a face that is glued less than one that only stands in joints', () => {
    say('read layer one of leg one', 'no gap');
    expect(say('is it flat')).toContain('six thousandths of an inch is allowed');
  });

  it('says what thickness is left, and what gives when it is not what was planned', () => {
    say('read long rail one', ...Array.from({ length: 12 }, () => 'no gap'));
    expect(say('how thick will it be')).toBe('I do not know how thick it is. Have its thickness taken first.');
    say('take the thickness', 'one and three eighths', 'enough');
    expect(say('how thick will it be')).toBe('The one, and one quarter inches planned can be had: one, and three eighths inches are left when this face is true, one eighth of an inch to come off the other.');
    say('the thickness at the far end is one and one eighth');
    expect(say('how thick will it be')).toMatch(/^Both faces true leave one, and one eighth inches at the most: one eighth of an inch less than the one, and one quarter inches planned\. What gives:/);
  });

  it('is how far the ends are out of square, by the diagonals (parallelogram, law of cosines; worked by hand)', () => {
    say('read long rail one', 'enough', 'take the diagonals', 'fifty one point four seven eight seven inches', 'fifty one point three six two one inches');
    expect(taken('longRail/1//face')).toEqual([['first diagonal', 0, 51.4787], ['second diagonal', 0, 51.3621]]);
    // Over the 50 1/2 in that the rail is long in the rough: (51.4787² − 51.3621²) / (4 · 50.5) = 0.0594 in.
    expect(say('is it flat')).toMatch(/The diagonal from near left to far right is longer by one hundred seventeen thousandths of an inch: the ends are out of square by fifty-nine thousandths of an inch over the width, those corners stand out\./);
  });

  it('tells of a square edge which arris is high', () => {
    say('read the edge of long rail one', 'far side ten thousandths', 'at the far side ten thousandths', ...Array.from({ length: 5 }, () => 'far side ten thousandths'), ...Array.from({ length: 7 }, () => 'no gap'));
    expect(say('what do I plane')).toBe('Two shavings of five thousandths of an inch at the highest place. First one shaving from end to end, the arris at the face. Then one shaving from end to end, the arris at the face.');
  });

  it('is nothing before anything was read', () => {
    expect(say('read long rail one', 'never mind', 'what do I plane')).toBe('Nothing was read of long rail one, reference face yet. Have its readings taken first.');
  });
});

describe('two sides that are to be glued', () => {
  it('close or gape, and rock on a high place', () => {
    say('read layer one of leg one', 'enough', 'read the other face', ...Array.from({ length: 10 }, () => 'no gap'));
    say('read layer two of leg one', ...Array.from({ length: 10 }, () => 'no gap'));
    expect(say('will they close')).toMatch(/^Joint one will close: its widest gap is nothing\./);
    say('the gap in the middle is one thirty second');
    expect(say('will they close')).toMatch(/^Joint one gapes by thirty-one thousandths of an inch, more than a glue line bears\./);
  });

  it('that are edges take a force to be pulled shut (beams under an even load, Wood Handbook, chapter 9; the same as the reckoning gives)', () => {
    say('read top board one second edge', 'enough', 'the gap in the middle is one thirty second', 'read top board two edge', 'no gap', 'enough');
    expect(say('will they close')).toMatch(/^Joint one gapes by thirty-one thousandths of an inch, more than a glue line bears\. To pull it shut takes some two hundred pounds over its length\./);
  });

  it('are to be read first, and there are none in one piece of wood', () => {
    expect(say('read layer one of leg one', 'enough', 'will they close')).toMatch(/^Two sides that meet must be read first: leg one, layer one, other face; and leg one, layer two, reference face\.$/);
    expect(say('read long rail one', 'enough', 'will they close')).toMatch(/^This is one piece of wood/);
  });
});

function sizeOfRail(): { width: number } {
  const rip = session.bench.state.piece?.graph.nodes.find(({ name }) => name === 'longRail.ripWidth');
  if (!rip) throw new Error('the demo rail has no rip width');
  session.request({ kind: 'size', size: 'longRail.ripWidth', copy: 1 });
  const [length] = session.bench.conversation.lastReply?.lengths ?? [];
  return { width: (length ?? 0) / 1_000_000 };
}

/** As a gap is said in millimetres, to a twentieth. */
function spokenTwentieths(millimetres: number): string {
  const words = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
  const [whole = '0', digits = ''] = (Math.round(millimetres * 20) / 20).toFixed(2).replace(/0+$/, '').split('.');
  return `${words[Number(whole)] ?? ''}${digits === '' ? '' : ` point ${Array.from(digits).map((digit) => words[Number(digit)]).join(' ')}`} ${whole === '1' && digits === '' ? 'millimetre' : 'millimetres'}`;
}
