import { describe, expect, test } from 'vitest';
import type { Request } from '../../core/bench/request.ts';
import { exportBundle } from '../../core/journal/bundle.ts';
import { nanometres, NANOMETRES_PER_INCH } from '../../core/length/length.ts';
import { atTheEndFrame } from '../core/respond/session.ts';
import { answerTo, untilSilent } from './inRoom.ts';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { benchNow, untilSaid, type WholeKiosk } from './wholeKiosk.ts';

/** Somebody at work, by voice alone. */
export function workByVoice(kiosk: () => WholeKiosk): void {
  describe('by voice', () => {
    test('three sizes for the layout of a leg are asked for, one is recorded, and what moved with it is heard', async () => {
      expect(await answerTo(kiosk().page, 'bench, how wide is leg two', /^Leg two, width/)).toMatch(/three, and (?:one quarter|a quarter) inches/);
      expect(await answerTo(kiosk().page, 'bench, where does the long rail mortise start', /^Leg, long rail mortise, start/)).toBe('Leg, long rail mortise, start, one inch from the top end.');
      expect(await answerTo(kiosk().page, 'bench, how deep is the long rail mortise', /mortise depth/)).toMatch(/one, and thirteen sixteenths inches/);
      const noted = await answerTo(kiosk().page, 'bench, record leg two width three and five sixteenths', /noted/);
      expect(noted).toMatch(/^Leg two, width, three, and five sixteenths inches, noted\. One sixteenth of an inch over the plan\./);
      expect(noted).toMatch(/Not cut yet, and now different: top, length, sixty, and one eighth inches instead of sixty inches, end to end/);
      expect(await answerTo(kiosk().page, 'bench, what moved', /^Measured: leg two, width, one sixteenth of an inch over the plan/)).toMatch(/Inside length, inside width and height hold\.$/);
      expect((await benchNow(kiosk().page)).entries.filter(({ kind }) => kind === 'measured')[0]).toEqual({ kind: 'measured', measurement: { size: 'leg.width', copy: 2, length: 84_137_500 } });
    });

    test('a cutting plan is looked for in a worker while the bench goes on, and sawn by what is said', async () => {
      const ask = (request: Request) => kiosk().page.evaluate((detail) => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-request', { detail })), request);
      for (const feet of [10, 10, 10, 10, 10, 10, 8, 8]) await ask({ kind: 'new board', length: nanometres(feet * 12 * NANOMETRES_PER_INCH), width: nanometres(10 * NANOMETRES_PER_INCH) });
      await answerTo(kiosk().page, 'bench, plan the cutting', /^Planning thirty-seven rough parts on eight boards/);
      expect(await untilSaid(kiosk().page, /the words take the plan/, 90_000)).toMatch(/this plan uses/i);
      await answerTo(kiosk().page, 'bench, take the plan', /plan is taken/i);
      await answerTo(kiosk().page, 'bench, what do i cut next', /^Board/);
      const cut = async () => (await benchNow(kiosk().page)).entries.filter(({ kind }) => kind === 'cut made').length;
      await answerTo(kiosk().page, 'bench, the cut is made', /^Cut one made/);
      expect(await cut()).toBe(1);
    });
  });
}

/** Brings another journal. */
export function glueByVoice(kiosk: () => WholeKiosk): void {
  test('with glue on the hands: the shop is told, the glue-up goes move by move, and the time that is left is asked for', async () => {
    const { bench, now } = atTheEndFrame();
    await kiosk().page.evaluate((text) => {
      const bench = document.querySelector('bench-kiosk');
      bench?.dispatchEvent(new CustomEvent('bench-request', { detail: { kind: 'take in everything', text, sure: true } }));
    }, exportBundle(bench.records, bench.state, now));
    await untilSilent(kiosk().page);
    expect(await answerTo(kiosk().page, 'bench, the shop is twelve degrees sixty percent', /^The shop/)).toMatch(/twelve degrees and sixty percent humidity\. Go, with care\.$/);
    expect(await answerTo(kiosk().page, 'bench, start gluing', /rehearsed/)).toMatch(/It was not rehearsed/);
    expect(await answerTo(kiosk().page, 'yes', /^Glue-up of the left end frame/)).toMatch(/Set out/);
    expect(await answerTo(kiosk().page, 'bench, next', /^Open time/)).toMatch(/^Open time four minutes, running\. Glue on/);
    await answerTo(kiosk().page, 'bench, done', /^Drive home the left short rail/);
    await answerTo(kiosk().page, 'bench, how much time is left', /^Left end frame open time, .* left\.$/);
    const { entries } = await benchNow(kiosk().page);
    expect(entries.filter(({ kind }) => kind === 'timer started')).toHaveLength(1);
  });
}

/** Closes the kiosk's page. */
export function secondWindow(kiosk: () => WholeKiosk): void {
  test('a second window shows the bench, but neither hears nor calls out; it takes over when the first is closed', async () => {
    const second = await kiosk().page.context().newPage();
    await second.addInitScript(() => {
      Object.assign(window, { spoke: false });
      setInterval(() => { if (document.querySelector<BenchKiosk>('bench-kiosk')?.view?.mouth.state === 'speaking') Object.assign(window, { spoke: true }); }, 50);
    });
    await second.goto(kiosk().address);
    const view = () => second.evaluate(() => { const shown = document.querySelector<BenchKiosk>('bench-kiosk')?.view; return { ear: shown?.ear.state, keeping: shown?.keeping.state, calls: shown?.bench.state.timers.some(({ name }) => name === 'a short one'), spoke: (window as unknown as { spoke: boolean }).spoke }; });
    await kiosk().page.evaluate(() => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-request', { detail: { kind: 'start timer', timer: 'plain', name: 'a short one', durationMs: 3_000 } })));
    await untilSaid(kiosk().page, /a short one.* time is up/i);
    await expect.poll(view, { timeout: 60_000 }).toMatchObject({ ear: 'off', keeping: 'read only', calls: true, spoke: false });
    await kiosk().page.close({ runBeforeUnload: false });
    await expect.poll(view, { timeout: 150_000 }).toMatchObject({ ear: 'waiting', keeping: 'kept' });
  });
}
