import { expect } from '@open-wc/testing';
import { NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import { craftOf } from '../../../core/respond/evening.ts';
import type { PlaningDrawingElement } from '../../../kiosk/draw/planingDrawing.ts';
import { MiniHost } from '../miniHost.ts';
import type { Request } from '../../../core/bench/request.ts';
import { clearStage, everyElement, settled } from '../stage.ts';

const taken = (host: MiniHost, side: string): readonly (readonly [string, number])[] => (craftOf(host.view.bench.state).surfaces.get(side) ?? []).map(({ what, gap }) => [what, Math.round((gap / NANOMETRES_PER_INCH) * 1000)] as const);
const text = (host: MiniHost): string => everyElement(host.kiosk).filter((each) => each.shadowRoot === null && each.checkVisibility()).map((each) => [...each.childNodes].filter((node) => node instanceof Text).map(({ textContent }) => textContent).join(' ')).join(' ').replace(/\s+/g, ' ');

async function asked(host: MiniHost, ...requests: readonly Request[]): Promise<void> {
  for (const request of requests) host.ask(request);
  await settled();
}

describe('readings at the bench, by the keys alone', () => {
  afterEach(clearStage);

  it('are reached from the second page of the menu, for any board', async () => {
    const host = await MiniHost.start();
    await host.touch('more', 'menu', 'next', 'readings', 'leg 2, layer 1');
    expect(host.screen).to.deep.equal({ name: 'truing', of: { part: 'leg', copy: 2, board: 1, face: 'face' } });
    await host.touch('other side');
    expect(host.screen).to.deep.equal({ name: 'truing', of: { part: 'leg', copy: 2, board: 1, face: 'other face' } });
  });

  it('take the way and the gap in two presses, and go on to the next', async () => {
    const host = await MiniHost.start();
    await asked(host, { kind: 'show', screen: { name: 'truing', of: { part: 'longRail', copy: 1, face: 'face' } } });
    await host.touch('read', 'left end high', '1/32 in', 'right end high', 'in thousandths', '5', 'OK', 'no gap', 'in fractions', '1', 'sixty-fourths', 'OK');
    expect(taken(host, 'longRail/1//face')).to.deep.equal([['sticks', 31], ['sticks', -5], ['along', 0], ['along', 16]]);
    await host.touch('leave out', 'leave');
    expect(host.view.bench.conversation.question).to.equal(null);
    expect(text(host)).to.contain('4 of 12 read');
  });

  it('are taken from the number pad alone, at a step that trues', async () => {
    const host = await MiniHost.start();
    await asked(host, { kind: 'go to step', step: 'face/longRail/1' });
    await host.touch('readings');
    await host.pad('⏎1214');
    expect(taken(host, 'longRail/1//face')).to.deep.equal([['sticks', 31], ['sticks', 63]]);
    await host.pad('-');
    expect(host.screen).to.deep.equal({ name: 'truing', of: { part: 'longRail', copy: 1, face: 'face' } });
  });

  it('draw what is to be planed: as many figures as there are places, and a contour where each stage ends', async () => {
    const host = await MiniHost.start();
    const of = { part: 'longRail', copy: 1, face: 'face' } as const;
    for (const [fromEnd, gap] of [[1, 0], [25.5, 31], [49.5, 0]] as const) await asked(host, { kind: 'surface reading', of, what: 'along', at: (fromEnd * NANOMETRES_PER_INCH) as never, gap: ((gap * NANOMETRES_PER_INCH) / 1000) as never });
    await host.touch('what to plane');
    const drawing = everyElement(host.kiosk).find((each): each is PlaningDrawingElement => each.localName === 'planing-drawing');
    const counts = [...drawing?.shadowRoot?.querySelectorAll('.count') ?? []].map(({ textContent }) => Number(textContent));
    expect(counts).to.have.length(21);
    expect(Math.max(...counts)).to.equal(7);
    expect(counts.filter((count) => count === 0)).to.have.length(3);
    expect(drawing?.shadowRoot?.querySelectorAll('.contour')).to.have.length(drawing?.face?.levels.length ?? 0);
    expect(text(host)).to.contain('Not true yet: out by 0.031 in, and 0.016 in is allowed.');
  });

  it('set the shaving and the sticks, and tell how thick it will be', async () => {
    const host = await MiniHost.start();
    await asked(host, { kind: 'show', screen: { name: 'truing', of: { part: 'longRail', copy: 1, face: 'face' } } });
    await host.touch('more', 'one shaving', '4', 'OK', 'winding sticks', '3', '0', 'OK', 'back');
    const { shaving, stick } = host.view.bench.state.settings;
    expect([shaving / NANOMETRES_PER_INCH, stick / NANOMETRES_PER_INCH]).to.deep.equal([0.004, 30]);
    await host.touch('more', 'take thickness', '1 3/8 in', 'leave', 'more', 'how thick');
    expect(host.said.at(-1)).to.match(/^The one, and one quarter inches planned can be had/);
    expect(text(host)).to.contain('The 1 1/4 in planned can be had');
  });
});
