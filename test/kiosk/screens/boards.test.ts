import { expect } from '@open-wc/testing';
import { takenPlan } from '../../../core/respond/cuttingState.ts';
import { freedBlanks, isFinished } from '../../../core/stock/cutting.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { MiniHost } from '../miniHost.ts';
import { clearStage, everyElement, settled } from '../stage.ts';

const INCH = 25_400_000;
const plan = (host: MiniHost) => takenPlan(host.view.bench.state);
const open = (host: MiniHost) => plan(host)?.boards.filter((board) => !isFinished(board)) ?? [];
const cut = (host: MiniHost): number => plan(host)?.boards.flatMap((board) => freedBlanks(board)).length ?? 0;
const say = (host: MiniHost, words: string): void => host.ask(parseRequest(words, host.view.bench));

describe('from boards to blanks', () => {
  afterEach(clearStage);

  it('a maker with a number pad puts boards with knots on the rack, plans, saws by voice, one board splits, and all is cut in the end', async function () {
    this.timeout(60_000);
    const host = await MiniHost.start();
    await host.pad('/+');
    await host.touch('boards');
    expect(host.screen.name).to.equal('boards');
    await host.pad('⏎96⏎10+1/2⏎⏎'); // new board: 96, 10 1/2, on the rack
    expect(host.view.bench.state.rack.get(1)).to.include({ length: 96 * INCH, width: 10.5 * INCH, number: 1 });
    await host.pad('1130⏎34⏎1'); // add defect: knot from 30 to 34, right across
    expect(host.view.bench.state.rack.get(1)?.defects).to.deep.equal([{ what: 'knot', from: 30 * INCH, to: 34 * INCH, fromEdge: 0, toEdge: 10.5 * INCH, face: 'through' }]);
    expect(everyElement(host.kiosk).filter((element) => element.classList.contains('defect')).length).to.equal(1);
    await host.pad('⏎120⏎10⏎⏎' + '1160⏎62⏎1'); // a knot in the second too
    for (const size of ['120⏎9', '120⏎10', '120⏎9', '120⏎10', '120⏎10']) await host.pad(`⏎${size}⏎⏎`);
    await host.pad('⏎100⏎10⏎⏎');
    await host.pad('1220⏎24⏎2' + '1⏎3⏎1'); // a check that does not go right across, from 1 to 3, right through
    expect(host.view.bench.state.rack.get(8)?.defects[0]).to.include({ what: 'check', fromEdge: INCH, toEdge: 3 * INCH, face: 'through' });
    await host.pad('-.'); // the rack, the cutting plan
    expect(host.screen.name).to.equal('cutting');
    await host.pad('2');
    expect(await host.plan()).to.match(/this plan uses/i);
    await host.pad('⏎'); // take the plan
    expect(plan(host)?.missing).to.deep.equal([]);
    for (let made = 0; made < 3; made++) say(host, 'the cut is made');
    const [begun] = open(host).filter(({ made }) => made > 0);
    const before = cut(host);
    say(host, `board ${String(begun?.board)} has a split from fifty five to sixty five`);
    const news = await host.plan();
    expect(news === undefined || news.includes('What changes')).to.equal(true);
    if (news !== undefined) say(host, 'take the plan');
    expect(cut(host)).to.be.at.least(before);
    host.ask({ kind: 'show', screen: { name: 'cutting' } });
    for (let made = 0; made < 300 && open(host).length > 0; made++) say(host, 'the cut is made');
    expect(open(host)).to.deep.equal([]);
    expect(cut(host) + (plan(host)?.missing.reduce((sum, { count }) => sum + count, 0) ?? 0)).to.equal(37);
    // The rough steps went with the cuts: those of every part that is whole.
    const whole = host.view.bench.state.piece?.file.parts.filter(({ id }) => !plan(host)?.missing.some(({ blank }) => blank === id)).map(({ id }) => `rip/${id}`) ?? [];
    expect(whole.length).to.be.greaterThan(0);
    expect([...host.view.bench.state.done]).to.include.members(whole);
  });

  it('a board is put right on the keys, and used up', async () => {
    const host = await MiniHost.start();
    say(host, 'new board ninety six by eight');
    await host.pad('2'); // put right
    await host.pad('37⏎'); // far end: 7
    await host.pad('44'); // thickness: 6/4
    await host.pad('⏎');
    expect(host.view.bench.state.rack.get(1)).to.include({ farWidth: 7 * INCH, width: 8 * INCH });
    await host.pad('3'); // used up
    expect(host.view.bench.state.rack.size).to.equal(0);
  });

  it('what only shows on a second look is told on the keys too: pith side and price', async () => {
    const host = await MiniHost.start();
    say(host, 'new board ninety six by eight');
    await host.pad('2+1' + '2'); // put right, more, pith side: the other face
    await host.pad('2' + '24.509⏎' + '⏎'); // price: 24.50, and no third figure after the point; on the rack
    expect(host.view.bench.state.rack.get(1)).to.include({ pithSide: 'other face', cents: 2450 });
    expect(host.kiosk.shadowRoot?.querySelector('bench-boards')?.shadowRoot?.textContent).to.contain('pith towards the other face');
  });

  it('grade, price and width at the yard are told on the keys', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'what to buy' });
    await settled();
    await host.pad('3' + '12' + '29⏎' + '38⏎' + '-'); // the yard: the second grade, 9 for a board foot, 8 wide; leave
    expect(host.view.bench.state.sawing).to.include({ grade: 'No. 1 Common', centsPerBoardFoot: 900, yardWidth: 8 * INCH });
    expect(host.screen.name).to.equal('buying');
    await host.pad('1');
    expect(host.said.at(-1)).to.contain('in money');
  });

  it('a board at the yard is told on the keys, and bought', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'what to buy' });
    await settled();
    await host.touch('does it help', '7', '2', 'OK', '8', 'OK');
    expect(host.said.at(-1)).to.match(/^Yes: /);
    await host.pad('⏎');
    expect(host.view.bench.state.rack.get(1)).to.include({ length: 72 * INCH, width: 8 * INCH });
  });

  it('what is left on rough parts is told on the keys, and the plan goes by it', async () => {
    const host = await MiniHost.start();
    say(host, 'new board ninety six by eight');
    host.ask({ kind: 'show', screen: { name: 'cutting' } });
    await host.pad('4'); // sizes
    await host.pad('41/8⏎'); // what the saw takes: 1/8
    expect(host.view.bench.state.sawing.kerf).to.equal(INCH / 8);
  });
});
