import { expect } from '@open-wc/testing';
import { nanometres } from '../../../core/length/length.ts';
import { sizeOf } from '../../../core/piece/evaluate.ts';
import { sizesOf, stepsOf } from '../../../core/respond/views.ts';
import { STARTER_FIELDS } from '../../../core/piece/starter.ts';
import { BenchKey } from '../../../kiosk/keys/benchKey.ts';
import { CARD } from '../../../kiosk/keys/keyCard.ts';
import { EVERYWHERE, KEY_TABLE } from '../../../kiosk/keys/keyTable.ts';
import { FractionText } from '../../../kiosk/look/fractionText.ts';
import { MiniHost } from '../miniHost.ts';
import { UNDER_WAY, timer, viewOf } from '../sampleViews.ts';
import { clearStage, everyElement, settled } from '../stage.ts';

const INCH = 25_400_000;
const names = (host: MiniHost): string => host.screen.name;

describe('at the bench', () => {
  afterEach(clearStage);

  it('a maker with nothing but a number pad walks the steps, measures a leg and hears what it does', async () => {
    const host = await MiniHost.start();
    const first = stepsOf(host.view.bench.state)[0];
    await host.pad('⏎');
    expect(host.view.bench.state.done.has(first?.id ?? '')).to.equal(true);
    await host.pad('/2'); // menu, parts
    expect(names(host)).to.equal('parts');
    await host.pad('1'); // leg
    expect(host.screen).to.include({ name: 'part', part: 'leg' });
    await host.pad('2'); // its width
    expect(host.screen).to.include({ name: 'size', size: 'leg.width' });
    await host.pad('23+9/32⏎'); // record, 3 9/32
    const { measurements } = host.view.bench.state;
    expect(measurements).to.deep.equal([{ size: 'leg.width', length: (3 + 9 / 32) * INCH }]);
    expect(host.said.at(-1)).to.contain('three, and nine thirty-seconds inches');
    await host.pad('0');
    expect(names(host)).to.equal('step');
  });

  it('a caliper that types records what waits on the pad, and elsewhere the bench asks what it was taken of', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'show', screen: { name: 'record', size: 'leg.width', copy: 2 } });
    await settled();
    await host.instrument('3.2600');
    expect(host.view.bench.state.measurements).to.deep.equal([{ size: 'leg.width', copy: 2, length: 3.26 * INCH }]);
    host.ask({ kind: 'size', size: 'leg.thickness', copy: 3 });
    await settled();
    await host.instrument('83,00 mm');
    expect(host.view.bench.conversation.question?.kind).to.equal('which');
    await host.touch('leg three thickness');
    expect(host.view.bench.state.measurements.at(-1)).to.deep.equal({ size: 'leg.thickness', copy: 3, length: 83_000_000 });
  });

  it('a size far from the plan is asked about before it is taken, and can be answered on the pad', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'show', screen: { name: 'record', size: 'leg.width', copy: 2 } });
    await settled();
    await host.pad('4⏎');
    expect(host.view.bench.conversation.question?.kind).to.equal('yes or no');
    await host.pad('-');
    expect(host.view.bench.state.measurements).to.deep.equal([]);
    host.ask({ kind: 'show', screen: { name: 'record', size: 'leg.width', copy: 2 } });
    await settled();
    await host.pad('4⏎');
    await host.pad('⏎');
    expect(host.view.bench.state.measurements).to.have.length(1);
  });

  it('a maker with gloves does the same by touch alone, and takes it back', async () => {
    const host = await MiniHost.start();
    await host.touch('more', 'menu', 'parts', '4 legs', 'width', 'record', '3', 'and', '9', 'thirty-seconds', 'OK');
    const sizes = sizesOf(host.view.bench.state);
    expect(sizes && sizeOf(sizes, 'leg.width')?.length).to.equal((3 + 9 / 32) * INCH);
    await host.touch('step', 'more', 'menu', 'journal', 'scratch that');
    expect(host.view.bench.state.measurements).to.deep.equal([]);
    await host.touch('put back');
    expect(host.view.bench.state.measurements).to.have.length(1);
  });

  it('arithmetic by keys: half of thirty-one and five eighths, and seven equal spaces', async () => {
    const host = await MiniHost.start();
    await host.pad('/4⏎31+5/8⏎1');
    const answer = (): number | undefined => {
      const { screen } = host;
      return screen.name === 'reckoning' ? screen.result?.answers[0]?.length : undefined;
    };
    expect(answer()).to.equal((31.625 * INCH) / 2);
    await host.pad('47⏎'); // spaces, seven of them
    expect(answer()).to.be.closeTo((31.625 * INCH) / 14, 1);
  });

  it('clocks are started, held, let go on and stopped from the pad', async () => {
    const host = await MiniHost.start();
    await host.pad('/3⏎5'); // clocks, new clock, five minutes: on its own key
    expect(host.view.bench.state.timers.map(({ durationMs }) => durationMs)).to.deep.equal([300_000]);
    await host.pad('7');
    expect(host.view.bench.state.timers[0]?.heldLeftMs).to.equal(300_000);
    await host.pad('7+');
    expect(host.view.bench.state.timers[0]?.heldLeftMs).to.equal(undefined);
    await host.pad('9');
    expect(host.view.bench.state.timers).to.deep.equal([]);
  });

  it('a clock of any whole number of minutes is typed, and so is any count', async () => {
    const host = await MiniHost.start();
    await host.pad('/3⏎⏎37⏎'); // clocks, new clock, type it
    expect(host.view.bench.state.timers.map(({ durationMs }) => durationMs)).to.deep.equal([37 * 60_000]);
    await host.pad('0/4⏎60⏎3'); // reckoning, sixty inches, times
    await host.pad('1'); // refused: one time is no multiplying
    await host.pad('⏎');
    expect(names(host)).to.equal('reckoning');
    await host.pad('7⏎');
    const { screen } = host;
    expect(screen.name === 'reckoning' && screen.result?.answers[0]?.length).to.equal(17 * 60 * INCH);
  });

  it('with the glue on, the clock of the step is one press away', async () => {
    const host = await MiniHost.start();
    const glueUp = stepsOf(host.view.bench.state).find(({ id }) => id.startsWith('lamination glue-up'));
    host.ask({ kind: 'go to step', step: glueUp?.id ?? '' });
    await settled();
    await host.touch('start clock');
    expect(host.view.bench.state.timers.map(({ kind }) => kind)).to.deep.equal(['open time']);
    await host.touch('step');
    expect(host.keys().map(({ spec }) => spec?.label)).to.include('sizes');
  });

  it('every fault of a file can be read until it is put away', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'load piece', text: '{ "name": "x", "parts": 3 }', from: 'a stick' });
    await settled();
    const sheet = (): string => host.kiosk.renderRoot.querySelector('bench-files')?.renderRoot.querySelector('.faults')?.textContent ?? '';
    expect(sheet()).to.contain('line 1');
    expect(host.keys().map(({ spec }) => spec?.label)).to.include('put away');
    await host.touch('put away');
    expect(sheet()).to.equal('');
  });

  it('the stroke of a fraction never leads away from what was typed', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'show', screen: { name: 'record', size: 'leg.width' } });
    await settled();
    await host.pad('3+/');
    expect(names(host)).to.equal('record');
    await host.touch('clear', 'listen');
    expect(host.acts).to.deep.equal([{ kind: 'listen' }]);
  });

  it('a notice is put away from where the maker is', async () => {
    const host = await MiniHost.start();
    host.kiosk.view = { ...host.view, notices: ['The wall clock was set on by one hour.', 'Another.'] };
    await settled();
    const line = host.kiosk.renderRoot.querySelector('status-line')?.renderRoot;
    expect(line?.querySelector('.words')?.textContent).to.contain('1 of 2: The wall clock');
    line?.querySelector<HTMLButtonElement>('.words button')?.click();
    expect(host.acts).to.deep.equal([{ kind: 'put away notice', index: 0 }]);
  });

  it('a due clock comes over the screen and leaves what was being typed as it was', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'show', screen: { name: 'record', size: 'leg.width' } });
    await settled();
    await host.pad('3+9');
    const typed = (): string => host.kiosk.renderRoot.querySelector('bench-record')?.renderRoot.querySelector('fraction-pad')?.renderRoot.querySelector('.number')?.getAttribute('aria-label') ?? '';
    expect(typed()).to.contain('3 9');
    const before = host.view;
    host.kiosk.view = { ...before, bench: { ...before.bench, state: { ...before.bench.state, timers: [timer(1, 'leg two clamps', 45, 49)] } } };
    await settled();
    expect(host.keys().map(({ spec }) => spec?.label)).to.deep.equal(['stop', 'five more', 'listen', 'got it']);
    await host.pad('⏎');
    expect(host.requests.at(-1)).to.deep.equal({ kind: 'acknowledge', timer: 1 });
    host.kiosk.view = before;
    await settled();
    expect(typed()).to.contain('3 9');
  });

  it('the listen key, saying again, the menu and undo are on the pad wherever the screen has no use of its own for them', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'show', screen: { name: 'parts' } });
    await settled();
    await host.pad('*./');
    expect(host.acts).to.deep.equal([{ kind: 'listen' }]);
    expect(host.requests.slice(-2).map(({ kind }) => kind)).to.deep.equal(['say again', 'show']);
    expect(names(host)).to.equal('menu');
    for (const { pad } of EVERYWHERE) expect(CARD.some((row) => row.where === 'everywhere' && row.pad !== '' && row.does !== ''), pad).to.equal(true);
  });

  it('every screen can be reached and left by touch alone', async () => {
    const host = await MiniHost.start();
    for (const label of ['what is left', 'parts', 'clocks', 'reckoning', 'journal', 'settings', 'files', 'what can I say']) {
      await host.touch('more', 'menu', label);
      expect(names(host)).to.not.equal('menu');
      await host.touch('step');
      expect(host.screen, `back from ${label}`).to.include({ name: 'step' });
    }
  });

  it('a new piece is made by questions, from the number pad', async () => {
    const host = await MiniHost.start();
    await host.pad('/7'); // menu, files
    await host.touch('new piece');
    await host.pad('⏎'); // its name as it is
    await host.pad('44⏎'); // inside length
    for (let asked = 2; asked < STARTER_FIELDS.length && host.keys().every(({ spec }) => spec?.label !== 'make it'); asked++) {
      await host.pad('⏎');
    }
    await host.pad('⏎');
    const { state } = host.view.bench;
    const sizes = sizesOf(state);
    expect(state.piece?.file.name).to.equal('Table');
    expect(sizes && sizeOf(sizes, 'inside.length')?.length).to.equal(44 * INCH);
    expect(names(host)).to.equal('step');
  });

  it('the marks of a leg are told one by one on the keys, and enough gives the screen its own keys back', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'marks', part: 'leg', copy: 1 });
    await settled();
    const labels = (): (string | undefined)[] => everyElement(host.kiosk).flatMap((element) => (element instanceof BenchKey ? [element.spec?.label] : [])).slice(-5);
    expect(labels()).to.deep.equal(['enough', 'back', 'say again', 'listen', 'next']);
    await host.pad('++-');
    expect(host.said.slice(-3).map((say) => say.split(':')[0])).to.deep.equal(['Short rail mortise', 'Side stretcher mortise', 'Short rail mortise']);
    expect(host.kiosk.view?.bench.conversation.lastReply?.note).to.match(/^2 of 5: short rail mortise/);
    await host.pad('⏎');
    expect(labels()).to.include('new size');
  });

  it('a sum that is reckoned while marks are told stands there itself, and next goes back to the marks', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'marks', part: 'leg', copy: 1 });
    host.ask({ kind: 'times', factor: 2, of: { length: nanometres(3 * INCH) } });
    await settled();
    const shown = (): unknown[] => everyElement(host.kiosk).flatMap((element) => (element instanceof FractionText ? [element.length] : []));
    expect(shown()).to.deep.equal([6 * INCH]);
    host.ask({ kind: 'tell in turn', to: 'next' });
    await settled();
    expect(shown()).not.to.include(6 * INCH);
    expect(host.kiosk.view?.bench.conversation.lastReply?.note).to.match(/^2 of 5/);
  });

  it('the key card names every key of the table', () => {
    for (const [where, keys] of Object.entries(KEY_TABLE)) {
      for (const [label, pad] of Object.entries(keys)) {
        const everywhere = EVERYWHERE.some((each) => each.label === label && each.pad === pad);
        expect(CARD.some((row) => row.does === label && (row.where === where || (everywhere && row.where === 'everywhere'))), `${where}: ${label}`).to.equal(true);
      }
    }
  });

  it('the status line makes room for the fraction pad, and takes it back', async () => {
    const host = await MiniHost.start();
    const narrow = (): boolean | undefined => host.kiosk.renderRoot.querySelector('status-line')?.hasAttribute('narrow');
    expect(narrow()).to.equal(false);
    host.ask({ kind: 'show', screen: { name: 'record', size: 'leg.width' } });
    await settled();
    expect(narrow()).to.equal(true);
    await host.touch('leave');
    expect(narrow()).to.equal(false);
  });

  it('settings go on to the next choice', async () => {
    const host = await MiniHost.start();
    await host.pad('/6');
    await host.touch('text size');
    expect(host.view.bench.state.settings.textPercent).to.equal(125);
    expect(host.kiosk.hasAttribute('larger')).to.equal(true);
    await host.touch('sizes to');
    expect(host.view.bench.state.settings.rounding).to.deep.equal({ unit: 'inch', denominator: 64 });
  });

  it('the ear\'s level moves its meter and leaves the screen alone', async () => {
    const host = await MiniHost.start();
    const { view } = host.kiosk;
    if (view === null) throw new Error('nothing is shown');
    const screen = host.kiosk.renderRoot.querySelector('bench-step');
    let drawn = 0;
    screen?.addController({ hostUpdated: () => { drawn++; } });
    await settled();
    drawn = 0;
    const lit = (): number => host.kiosk.renderRoot.querySelector('status-line')?.renderRoot.querySelectorAll('rect.on').length ?? 0;
    const before = lit();
    host.kiosk.view = { ...view, ear: { ...view.ear, levelDb: -3 }, now: { ...view.now, monotonicMs: view.now.monotonicMs + 100 } };
    await settled();
    expect(drawn).to.equal(0);
    expect(lit()).to.be.greaterThan(before);
    host.kiosk.view = { ...view, now: { ...view.now, monotonicMs: view.now.monotonicMs + 1_000 } };
    await settled();
    expect(drawn, 'a second later the clocks have moved').to.equal(1);
  });

  it('a stuck key is reported to the host', async () => {
    const host = await MiniHost.start();
    host.kiosk.view = viewOf({ name: 'step' }, { state: UNDER_WAY });
    const held = (repeat: boolean, atMs: number): void => {
      const event = new KeyboardEvent('keydown', { code: 'Numpad5', key: '5', location: 3, repeat, bubbles: true, composed: true });
      Object.defineProperty(event, 'timeStamp', { value: atMs });
      host.kiosk.dispatchEvent(event);
    };
    held(false, 0);
    for (let atMs = 500; atMs < 10_000; atMs += 33) held(true, atMs);
    expect(host.acts).to.deep.equal([{ kind: 'key stuck', label: '5' }]);
  });
});
