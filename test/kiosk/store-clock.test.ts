import { assert } from '@open-wc/testing';
import { openBenchClock, type ClockSources } from '../../kiosk/store/clock.ts';

/** A machine whose clocks are set by hand. */
class Machine implements ClockSources {
  readonly pageId = 'page 1';
  steady = 1_000;
  wall = 1_800_000_000_000;
  uptime = 5_000_000;
  bootId = 'boot one';
  trusted = true;
  answers = true;
  asked = 0;

  pass(ms: number): void {
    this.steady += ms;
    this.wall += ms;
    this.uptime += ms;
  }

  steadyMs(): number {
    return this.steady;
  }

  wallMs(): number {
    return this.wall;
  }

  async ask(what: 'clock' | 'heartbeat'): Promise<unknown> {
    this.asked += 1;
    await Promise.resolve();
    if (!this.answers) throw new Error('no answer');
    const reading = { wallMs: this.wall, wallTrusted: this.trusted, bootId: this.bootId, monotonicMs: this.uptime };
    return what === 'clock' ? { ...reading, basis: 'kept by a battery clock', seenBefore: null } : reading;
  }
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the kiosk\'s clock', () => {
  it('tells the machine\'s time since boot and carries on between two answers', async () => {
    const machine = new Machine();
    const clock = await openBenchClock(machine);
    await settled();
    machine.pass(1_234);
    assert.deepEqual(clock.now(), { wallMs: 1_800_000_001_234, wallTrusted: true, bootId: 'boot one', monotonicMs: 5_001_234 });
    assert.equal(clock.basis, 'kept by a battery clock');
    clock.stop();
  });

  it('is a boot of its own, and does not believe the wall clock, when the server never answered', async () => {
    const machine = new Machine();
    machine.answers = false;
    const clock = await openBenchClock(machine);
    machine.pass(60_000);
    assert.deepEqual(clock.now(), { wallMs: 1_800_000_060_000, wallTrusted: false, bootId: 'page 1', monotonicMs: 61_000 });
    machine.answers = true;
    clock.stop();
  });

  it('does not believe a wall clock that was set, until the server has been asked again', async () => {
    const machine = new Machine();
    const clock = await openBenchClock(machine);
    await settled();
    machine.wall -= 3_600_000;
    assert.isFalse(clock.now().wallTrusted);
    await settled();
    assert.isTrue(clock.now().wallTrusted);
    clock.stop();
  });

  it('counts the time that the machine slept, although the page\'s own clock stood still', async () => {
    const machine = new Machine();
    const clock = await openBenchClock(machine);
    await settled();
    const before = clock.now().monotonicMs;
    machine.wall += 7_200_000;
    machine.uptime += 7_200_000;
    clock.now();
    await settled();
    assert.equal(clock.now().monotonicMs - before, 7_200_000);
    clock.stop();
  });

  it('never steps backwards when an answer comes late', async () => {
    const machine = new Machine();
    const clock = await openBenchClock(machine);
    await settled();
    machine.pass(10_000);
    const before = clock.now().monotonicMs;
    machine.uptime -= 40;
    machine.wall += 5_000;
    clock.now();
    await settled();
    assert.equal(clock.now().monotonicMs, before);
    clock.stop();
  });

  it('keeps its boot when a server elsewhere was started again under another name', async () => {
    const machine = new Machine();
    const clock = await openBenchClock(machine);
    await settled();
    machine.pass(1_000);
    machine.bootId = 'server 77';
    machine.uptime = 3;
    machine.wall += 5_000;
    clock.now();
    await settled();
    machine.pass(1_000);
    const now = clock.now();
    assert.equal(now.bootId, 'boot one');
    assert.equal(now.monotonicMs, 5_002_000);
    clock.stop();
  });
});
