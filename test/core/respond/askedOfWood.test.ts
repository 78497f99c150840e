import { describe, expect, it } from 'vitest';
import { nearestPhrase } from '../../../core/talk/nearest.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { Session } from './session.ts';

/** What is answered to words said one after the other, with the demo piece on the bench. */
function answer(...words: readonly string[]): string {
  const session = Session.withDemo();
  return words.map((one) => session.say(one)).at(-1) ?? '';
}

describe('the whole piece', () => {
  it.each(['what are we building', 'how big is the table', 'how long is the table', 'what is this thing', 'how big is it'])('“%s”: its name, what it is for, the sizes that must hold and the largest part', (words) => {
    expect(answer(words)).toMatch(/^Baker's work table\. A kneading table .* forty-six inches.*Height, floor to the top face, thirty-four inches\. Its largest part is the top: sixty inches by thirty inches\.$/);
  });

  it('has a height of its own, and parts that are counted', () => {
    expect(answer('how tall is the table')).toMatch(/^Height, .* thirty-four inches\.$/);
    expect(answer('how many parts are there')).toMatch(/^Twenty-four parts: four legs, .* and twelve buttons\.$/);
    expect(answer('what is the table made of')).toMatch(/hard maple/);
  });

  it('that has no name for it is still asked for: nothing is on the bench', () => {
    expect(new Session().say('what are we building')).toMatch(/No piece is on the bench/);
  });
});

describe('parts in the rough', () => {
  it('a leg is sawn to its rough length until that is done, and then measures what it should', () => {
    const session = Session.withDemo();
    expect(session.say('how long do I cut the legs')).toBe('Leg, rough length, thirty-three, and one quarter inches.');
    expect(session.say('how wide do I rip the legs')).toBe('Leg, width off the rip, three, and three eighths inches.');
    for (const step of ['rough crosscut/leg', 'rip/leg']) session.note({ kind: 'step done', step });
    expect(session.say('how long do I cut the legs')).toMatch(/^Leg, length, end to end, thirty-two, and one quarter inches/);
  });

  it.each(['how long should the rough legs be', 'how long are the leg layers', 'how long are the legs in the rough'])('“%s”: as it is sawn and as it is finished', (words) => {
    expect(answer(words)).toBe('Leg layer, length: thirty-three, and one quarter inches in the rough, thirty-two, and one quarter inches finished.');
  });

  it.each(['how thick are the leg layers', 'how thick is each layer', 'how thick do I plane the layers'])('“%s”: both thicknesses', (words) => {
    expect(answer(words)).toBe('Leg layer, thickness: one, and one quarter inches in the rough, one, and one eighth inches finished.');
  });

  it('what one is glued up from is counted, of one and of all; a solid part is one piece', () => {
    expect(answer('how many layers per leg')).toBe('Three leg layers for each; twelve in all, for four legs.');
    expect(answer('how many boards in the top')).toBe('Six top boards.');
    expect(answer('how many layers per long rail')).toMatch(/one solid piece/);
    expect(answer('how many legs')).toBe('Four legs.');
  });

  it('what is left on them is told with what the saw takes', () => {
    expect(answer('how much do I add for rough length')).toMatch(/^Over the finished sizes I leave one inch in length, one quarter of an inch in width, one eighth of an inch in thickness .*The saw takes one sixteenth/);
  });
});

describe('boards to buy and boards that came', () => {
  it.each([
    ['I have a board six feet long nine inches wide eight quarter', 'seventy-two inches by nine inches, eight quarter hard maple'],
    ['add a board ninety six inches by eight and a half inches eight quarter maple', 'ninety-six inches by eight, and a half inches, eight quarter hard maple'],
    ['I bought another board ten feet by eight inches six quarter cherry', 'one hundred twenty inches by eight inches, six quarter cherry'],
  ])('“%s” is on the rack', (words, board) => {
    expect(answer(words)).toBe(`Board one: ${board}. Mark its end one.`);
  });

  it('maple is the maple of the piece; where there are two of them it is asked which', () => {
    const session = Session.withDemo();
    session.say('new board ninety six by eight eight quarter soft maple');
    expect(session.say('new board ninety six by eight eight quarter maple')).toMatch(/hard maple.*soft maple|soft maple.*hard maple/i);
  });

  it('without a size the bench asks for it and writes nothing', () => {
    const session = Session.withDemo();
    expect(session.say('the boards came in today')).toMatch(/length and its width.*moisture meter/);
    expect(session.entries).toEqual([]);
  });

  it('a board alone is told what it gives, before there is any plan', () => {
    expect(answer('new board eight feet by ten inches eight quarter', 'what can I get out of that board')).toMatch(/^Board one by itself gives four leg layers, .* percent of it used/);
    expect(answer('what can I get out of that board')).toMatch(/no board on the rack/);
  });

  it('a board of the rack is told by its number, not one of the top', () => {
    expect(answer('new board eight feet by ten inches eight quarter', 'how long is board one')).toMatch(/^Board one: ninety-six inches by ten inches/);
    expect(answer('new board eight feet by ten inches eight quarter', 'that board has a knot')).toMatch(/^Knot, from where to where/);
  });

  it('whether there is enough is answered first; the cost needs a price', () => {
    expect(answer('do I have enough wood')).toMatch(/^No, the rack is empty\. Four kinds of board/);
    expect(answer('how much will the wood cost')).toMatch(/I do not know their price\. Tell me what a board foot costs/);
    expect(answer('a board foot costs ten', 'how much will the wood cost')).toMatch(/^About seven hundred \w+(?:-\w+)? in money, for seventy-one board feet in all\./);
  });

  // Rough and surfaced thickness of the hardwood grading standard: see core/wood/lumber/quarters.ts.
  it('a thickness by its quarters is told in inches, and what it is for', () => {
    expect(answer('what is eight quarter')).toBe('Eight quarter is two inches in the rough, at least one, and three quarters inches once both faces are planed. You need it for the top boards.');
    expect(answer('do I need ten quarter')).toMatch(/This piece needs none: it is cut from eight quarter, six quarter, five quarter and four quarter\.$/);
    expect(answer('how thick must the boards be')).toMatch(/^Eight quarter for the top boards\. Six quarter for the long rails, /);
  });
});

describe('whether the wood is ready', () => {
  it('without a reading of it that is asked for, with the reason and the rule', () => {
    for (const words of ['is the wood ready', 'is it dry enough', 'when can I mill the boards', 'how wet is the wood']) expect(answer(words)).toMatch(/moisture of the stock: wood that is too wet shrinks.*tell me the percent.*six to eight percent/);
  });

  // Furniture lumber is dried to 6 to 8 percent: Wood Handbook, chapter 13.
  it.each([['eight', 'Dry enough'], ['nine', 'Near enough'], ['twelve', 'Too wet'], ['three', 'Very dry']])('at %s percent it is told by the rule until the house is known', (percent, verdict) => {
    expect(answer(`the meter says ${percent} percent`, 'is the wood ready')).toMatch(new RegExp(`^${verdict}.* by the rule: .*six to eight percent.*driest month`));
    expect(answer(`is ${percent} percent okay`)).toMatch(new RegExp(`^${verdict}`));
  });

  it('asking about a percent writes nothing down', () => {
    const session = Session.withDemo();
    session.say('is nine percent too wet');
    expect([session.entries, session.bench.state.stockMoisture]).toEqual([[], null]);
  });

  it('with the house known, by the house', () => {
    const house = ['the driest month is twenty degrees thirty percent', 'the dampest month is twenty two degrees sixty five percent'];
    expect(answer(...house, 'the stock is at nine percent', 'is the wood ready')).toMatch(/^The stock is ready/);
    expect(answer(...house, 'what should the moisture be')).toMatch(/^Within two points of .* percent: that is what wood comes to in the house/);
  });

  it('rest is told by its clock once it runs', () => {
    expect(answer('how long must the wood rest')).toMatch(/a day at least, once it is sawn\. Fresh sawn wood goes on moving/);
    const session = Session.withDemo();
    session.note({ kind: 'timer started', timer: { kind: 'rest', name: 'leg layers rest', durationMs: 7_200_000, basis: 'common practice' } });
    expect(session.say('how long must the wood rest')).toMatch(/^Leg layers rest, two hours left\./);
  });
});

describe('what could be asked instead', () => {
  const { bench } = Session.withDemo();
  const hint = (words: string) => nearestPhrase(words.split(' '), bench, (tried) => parseRequest(tried.join(' '), bench).kind !== 'not understood') ?? 'nothing';

  it('is good English, and about the same thing', () => {
    expect(hint('how long are the doorknobs')).toBe('nothing');
    expect(hint('what size are the drawer sides')).not.toMatch(/are the [a-z ]*[^s]$/);
    expect(hint('what lamp do i need')).not.toMatch(/tools/);
    expect(hint('how long is the long rain')).toBe('how long is the long rail');
  });
});
