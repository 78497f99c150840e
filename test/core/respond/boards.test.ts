import { describe, expect, it } from 'vitest';
import { problemOf, takenPlan } from '../../../core/respond/cuttingState.ts';
import { readRecord } from '../../../core/journal/record.ts';
import { benchFrom } from '../../../core/respond/advance.ts';
import type { Reply } from '../../../core/bench/reply.ts';
import { freedBlanks, isFinished } from '../../../core/stock/cutting.ts';
import { parseCsv } from '../../../core/stock/csv.ts';
import { canBeCut, faultsOf } from '../../../core/stock/plan/check.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { found } from './planned.ts';
import { Session } from './session.ts';

const INCH = 25_400_000;

/** Four more, so that every part finds a board. */
const ENOUGH = ['new board ninety six by ten', 'new board one hundred and twenty by eight', 'new board one hundred and twenty by nine', 'new board one hundred and twenty by nine'];

/** Four boards with knots, as a maker tells them. */
function stacked(...more: readonly string[]): Session {
  const session = Session.withDemo();
  for (const words of ['new board ninety six by nine eight quarter', 'knot from thirty to thirty four', 'across one to two', 'new board one hundred and twenty by ten', 'check from zero to four', 'new board one hundred by nine and a half', 'new board ninety six by eight', ...more]) session.say(words);
  return session;
}

const rack = (session: Session) => [...session.bench.state.rack.values()];
const plan = (session: Session) => { const taken = takenPlan(session.bench.state); if (!taken) throw new Error('no plan is taken'); return taken; };
const request = (session: Session, words: string): Reply => session.request(parseRequest(words, session.bench));

function planned(...more: readonly string[]): Session {
  const session = stacked(...more);
  session.say('plan the cutting');
  found(session);
  session.say('take the plan');
  return session;
}

describe('boards told at the bench', () => {
  it('get their number by themselves, and what is not said is as with the board before', () => {
    const session = Session.withDemo();
    expect(session.say('new board ninety six by eight and a quarter eight quarter')).toBe('Board one: ninety-six inches by eight, and one quarter inches, eight quarter hard maple. Mark its end one.');
    expect(session.say('new board eight feet by seven')).toContain('Board two: ninety-six inches by seven inches, eight quarter hard maple');
    expect(session.say('new board four quarter one hundred by six of white oak')).toContain('four quarter white oak');
    expect(rack(session).map(({ number, thickness, species }) => [number, thickness / INCH, species])).toEqual([[1, 2, 'hard maple'], [2, 2, 'hard maple'], [3, 1, 'white oak']]);
  });

  it('take what is wrong with them, their taper, sapwood, grain and colour, and tell it all again', () => {
    const session = Session.withDemo();
    session.say('new board ninety six by eight');
    expect(session.say('knot from thirty to thirty four')).toBe('Board one: knot, thirty inches to thirty-four inches from the marked end, right across.');
    session.say('split from ninety to ninety six');
    expect(session.say('across two to three and a half')).toContain('two inches to three, and a half inches from the reference edge');
    session.say('it tapers to seven');
    session.say('sapwood one inch');
    session.say('it is quarter sawn');
    session.say('color group two');
    expect(session.say('tell me about board one')).toBe('Board one: ninety-six inches by eight inches, tapering to seven inches, eight quarter hard maple, quarter sawn, one inch of sapwood along the far edge, colour group 2. From the marked end: knot thirty inches to thirty-four inches and split ninety inches to ninety-six inches.');
  });

  it('refuse what cannot be, and nothing is written down', () => {
    const session = Session.withDemo();
    session.say('new board ninety six by eight');
    const before = session.bench.records.length;
    expect(session.say('knot from one hundred to one hundred and four')).toContain('begins beyond the end of the board');
    expect(session.say('knot from forty to thirty')).toContain('ends before it begins');
    expect(session.say('sapwood nine inches')).toContain('narrower than the board');
    expect(session.say('board seven is used up')).toBe('There is no board seven on the rack.');
    expect(session.request({ kind: 'new board', length: 0 as never, width: INCH as never }).say).toContain('more than nothing');
    expect(session.bench.records).toHaveLength(before);
  });

  it('are put right, used up and brought back', () => {
    const session = stacked();
    session.say('board three is ninety eight long');
    expect(session.bench.state.rack.get(3)?.length).toBe(98 * INCH);
    session.say('board three is used up');
    expect(session.say('how many boards')).toBe('Three boards on the rack: three of eight quarter hard maple.');
    session.say('scratch that');
    expect(session.bench.state.rack.get(3)?.length).toBe(98 * INCH);
    session.say('board four is used up');
    expect(session.say('new board ninety by seven')).toContain('Board five');
  });

  it('are taken in from a table, all or none, and a fault is told with its line', () => {
    const session = Session.withDemo();
    const head = 'board,species,length,width,thickness,defects\r\n';
    const bad = session.request({ kind: 'take in boards', from: 'rack.csv', text: `${head}1,hard maple,96 in,8 in,8/4,\r\n2,hard maple,long,8 in,8/4,\r\n` });
    expect(bad.note).toContain('line 3: ');
    expect(session.bench.state.rack.size).toBe(0);
    session.request({ kind: 'take in boards', from: 'rack.csv', text: `${head}1,hard maple,96 in,8 in,8/4,\r\n2,hard maple,100 in,8 in,8/4,"knot 30 in to 34 in, 1 in to 2 in"\r\n` });
    expect(session.bench.state.rack.get(2)?.defects).toHaveLength(1);
    expect(request(session, 'save the boards').file?.text).toContain('2,hard maple,100 in,8 in,8/4,,,,,,"knot 30 in to 34 in, 1 in to 2 in, through"');
  });
});

describe('the cutting plan', () => {
  it('is offered with the best possible beside it, and holds only when it is taken', () => {
    const session = stacked(...ENOUGH);
    expect(session.say('take the plan')).toContain('There is no plan to take');
    expect(session.say('plan the cutting')).toBe('Planning thirty-seven rough parts on eight boards.');
    const news = found(session);
    expect(news).toMatch(/Best possible is \w+ boards; this plan uses \w+\.|This plan uses \w+ boards; no plan can do with less than/);
    expect(takenPlan(session.bench.state)).toBeUndefined();
    session.say('take the plan');
    expect(plan(session).boards.reduce((sum, { placed }) => sum + placed.length, 0)).toBe(37);
    expect(plan(session).bound).toBeLessThanOrEqual(plan(session).boards.length);
  });

  it('is not taken when the rack has changed since, and is looked for again', () => {
    const session = stacked();
    session.say('plan the cutting');
    found(session);
    session.say('board one is used up');
    const reply = request(session, 'take the plan');
    expect(reply).toMatchObject({ signal: 'wrong' });
    expect(takenPlan(session.bench.state)).toBeUndefined();
  });

  it('says what the rack does not give, and what to buy for it with the reason of the spare', () => {
    const session = Session.withDemo();
    session.say('new board ninety six by eight eight quarter');
    session.say('plan the cutting');
    expect(found(session)).toContain('The rack is not enough');
    // FAS must yield 83 1/3 % clear (hardwood grading chart as in shared trade facts 2.1): a fifth more is bought.
    expect(session.hearOut('what do I buy')).toMatch(/eight quarter hard maple: .* board feet, .*Twenty percent is spare, because FAS need only give eighty-three percent clear\./i);
    expect(session.say('does seventy two by eight help')).toMatch(/^Yes: seventy-two inches by eight inches, .* board feet/);
    expect(session.say('does forty eight by six five quarter help')).toContain('two and a half board feet');
    expect(session.say('bought')).toContain('Board two');
    expect(session.say('does six by one help')).toMatch(/^No: /);
  });

  it('has no room for a piece that asks for wood that no board is of', () => {
    const session = Session.withDemo();
    session.say('new board ninety six by eight eight quarter of white oak');
    session.say('plan the cutting');
    expect(found(session)).toContain('no board of the species');
  });
});

describe('cutting by the plan', () => {
  it('tells the next cut from the marked end, and every cut that follows, with the kerf reckoned in', () => {
    const session = planned(...ENOUGH);
    const [first] = plan(session).boards;
    expect(session.say('what do I cut next')).toMatch(new RegExp(`^Board \\S+, cut one of .*: crosscut at .* from the marked end, saw (before|beyond) the line\\.$`));
    expect(session.hearOut('read me the cuts')).toMatch(/cuts\. Lengths are from the marked end, rips from the reference edge\. Saw beyond the line unless I say before\. One, crosscut at [^.]*\. Two, [^.]*\. .* The saw takes one sixteenth of an inch, which is reckoned in\.$/);
    expect(session.say(`where on board ${String(first?.board)}`)).toContain('from the reference edge');
  });

  it('counts what is cut, puts off-cuts back on the rack by themselves, and finishes with every part', () => {
    const session = planned(...ENOUGH);
    const wanted = problemOf(Session.withDemo().bench.state)?.blanks.reduce((sum, { count }) => sum + count, 0);
    for (let cuts = 0; cuts < 400 && plan(session).boards.some((board) => !isFinished(board)); cuts++) session.say('cut');
    const free = plan(session).boards.flatMap((board) => freedBlanks(board));
    expect(free).toHaveLength(wanted ?? 0);
    expect(session.say('what do I cut next')).toBe('Every cut of the plan is made.');
    expect(rack(session).filter(({ cutFrom }) => cutFrom !== undefined).length).toBeGreaterThan(0);
    expect(rack(session).every(({ length, width, farWidth }) => length >= 12 * INCH && Math.min(width, farWidth) >= 2 * INCH)).toBe(true);
    expect(plan(session).boards.every(({ board }) => !session.bench.state.rack.has(board))).toBe(true);
  });

  it('plans anew when a board splits: what is cut stays, what is lost comes from elsewhere, and the change is told', () => {
    const session = planned(...ENOUGH);
    for (let cut = 0; cut < 3; cut++) session.say('cut');
    const begun = plan(session).boards.find(({ made }) => made > 0);
    const cutBefore = plan(session).boards.flatMap((board) => freedBlanks(board)).length;
    const told = session.say(`board ${String(begun?.board)} has a split from fifty to sixty`);
    expect(told).toContain('must come from elsewhere');
    const news = found(session);
    expect(news).toContain('What changes');
    session.say('take the plan');
    const { state } = session.bench;
    const parts = plan(session).boards.reduce((sum, { placed }) => sum + placed.length, 0);
    expect(parts + plan(session).missing.reduce((sum, { count }) => sum + count, 0)).toBe(37);
    expect(plan(session).boards.flatMap((board) => freedBlanks(board)).length).toBeGreaterThanOrEqual(cutBefore);
    for (const { placed } of plan(session).boards) expect(canBeCut(placed, state.sawing.kerf)).toBe(true);
    const onSplit = plan(session).boards.find(({ board }) => board === begun?.board)?.placed.filter((blank) => blank.from < 60 * INCH && blank.from + blank.length > 50 * INCH) ?? [];
    expect(onSplit).toEqual([]);
  });

  it('takes done for the cut while a board is on the screen, and for the step elsewhere', () => {
    const session = planned(...ENOUGH);
    session.say('done');
    expect(plan(session).boards.reduce((sum, { made }) => sum + made, 0)).toBe(1);
    expect(session.say('next')).toContain('cut two of');
    expect(session.bench.state.done.size).toBe(0);
    session.request({ kind: 'show', screen: { name: 'step' } });
    expect(session.say('where am I')).toContain('By the plan, ');
    session.say('done');
    expect(session.bench.state.done.size).toBe(1);
  });

  it('is cut as it was reckoned, though another saw is told of meanwhile', () => {
    const session = planned(...ENOUGH);
    const free = () => plan(session).boards.flatMap((board) => freedBlanks(board)).length;
    for (let cut = 0; cut < 6; cut++) session.say('cut');
    const before = free();
    session.say('the kerf is one thirty second');
    expect(free()).toBe(before);
  });

  it('takes a cut back, with its off-cut', () => {
    const session = planned(...ENOUGH);
    const [before, made] = [session.bench.state.rack.size, plan(session).boards.map((board) => board.made)];
    session.say('cut');
    session.say('scratch that');
    expect([session.bench.state.rack.size, plan(session).boards.map((board) => board.made)]).toEqual([before, made]);
  });

  it('does the rough steps of a part by itself when its last blank is free, and takes them back with the cut', () => {
    const session = planned(...ENOUGH);
    const done = () => [...session.bench.state.done].filter((step) => /^(rough crosscut|reference edge|rip)\//.test(step));
    const all = new Set(session.bench.state.piece?.file.parts.map(({ id }) => id));
    let said = '';
    for (let cuts = 0; cuts < 400 && done().length === 0; cuts++) said = session.say('the cut is made');
    const [part] = done().map((step) => step.split('/')[1] ?? '');
    const free = plan(session).boards.flatMap((board) => freedBlanks(board)).filter(({ blank }) => blank === part).length;
    expect(free).toBe({ ...problemOf(Session.withDemo().bench.state) }.blanks?.find(({ id }) => id === part)?.count);
    expect(done().slice(0, 3)).toEqual([`rough crosscut/${part ?? ''}`, `reference edge/${part ?? ''}`, `rip/${part ?? ''}`]);
    expect(said).toMatch(/The rough cutting of .* is done\./);
    session.say('scratch that');
    expect(done()).toEqual([]);
    session.say('put it back');
    for (let cuts = 0; cuts < 400 && plan(session).boards.some((board) => !isFinished(board)); cuts++) session.say('the cut is made');
    expect(new Set(done().filter((step) => step.startsWith('rip/')).map((step) => step.slice(4)))).toEqual(all);
  });

  it('is saved as a table in the order of the cuts: every part once, with the cut that frees it', () => {
    const session = planned(...ENOUGH);
    for (let cuts = 0; cuts < 6; cuts++) session.say('the cut is made');
    const file = request(session, 'save the plan').file;
    const rows = parseCsv(file?.text ?? '');
    const [head, ...lines] = (rows.ok ? rows.value : []).map(({ cells }) => cells);
    expect(file?.name).toBe('cutting plan.csv');
    expect(head).toEqual(['board', 'cut', 'part', 'from marked end', 'from reference edge', 'length', 'width', 'is cut']);
    expect(lines).toHaveLength(plan(session).boards.flatMap(({ placed }) => placed).length);
    expect(lines.filter((cells) => cells.at(-1) === 'yes')).toHaveLength(plan(session).boards.flatMap((board) => freedBlanks(board)).length);
    for (const { board } of plan(session).boards) {
      const cuts = lines.filter(([number]) => Number(number) === board).map((cells) => Number(cells[1]));
      expect(cuts).toEqual([...cuts].sort((a, b) => a - b));
    }
    expect(request(Session.withDemo(), 'save the plan')).toMatchObject({ signal: 'wrong' });
  });

  it('leaves a rough step as the maker has it: passed over, or opened again after it was done', () => {
    const session = planned(...ENOUGH);
    for (const { id } of session.bench.state.piece?.file.parts ?? []) session.note({ kind: 'step skipped', step: `rip/${id}` });
    for (let cuts = 0; cuts < 400 && ![...session.bench.state.done].some((step) => step.startsWith('rough crosscut/')); cuts++) session.say('the cut is made');
    const step = [...session.bench.state.done].find((one) => one.startsWith('rough crosscut/')) ?? '';
    expect([...session.bench.state.done].filter((one) => one.startsWith('rip/'))).toEqual([]);
    session.note({ kind: 'step reopened', step });
    session.say('the cut is made');
    expect(session.bench.state.done.has(step)).toBe(false);
  });

  it('does not cut a board that was told otherwise since', () => {
    const session = planned(...ENOUGH);
    const [first] = plan(session).boards;
    session.say(`board ${String(first?.board)} is twenty long`);
    expect(session.say(`cut on board ${String(first?.board)}`)).toContain('is not as it was planned');
    expect(plan(session).boards[0]?.made).toBe(0);
  });

  it('is read back from the journal as it was written, with the rack and every cut', () => {
    const session = planned(...ENOUGH, 'color group two', 'it is rift sawn');
    for (let cut = 0; cut < 12; cut++) session.say('cut');
    session.say('board four has a split from fifty to sixty');
    for (const record of session.bench.records) expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual({ ok: true, value: record });
    const again = benchFrom(session.bench.records).state;
    expect([again.rack, again.plans, again.sawing, again.lastBoard]).toEqual([session.bench.state.rack, session.bench.state.plans, session.bench.state.sawing, session.bench.state.lastBoard]);
  });

  it('is printed, a sheet a board, as soon as a plan is taken', () => {
    expect(stacked().say('print the cutting plan')).toContain('No cutting plan is taken yet');
    const session = planned(...ENOUGH);
    const reply = request(session, 'print the cutting plan');
    expect(reply.paper?.to).toBe('printer');
    expect(reply.say).toMatch(/^The cutting plan takes \w+ sheets/);
  });

  it('hands on plans that an account of its own finds no fault with', () => {
    const session = stacked(...ENOUGH);
    session.say('the kerf is one eighth');
    session.say('plan the cutting');
    found(session);
    const { offer } = session.bench.conversation;
    expect(offer?.plan && faultsOf(offer.plan, offer.problem)).toEqual([]);
    expect(offer?.problem.saw.kerf).toBe(INCH / 8);
  });
});
