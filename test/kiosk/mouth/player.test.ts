import { expect } from '@open-wc/testing';
import { createPlayer, type PlayerOptions } from '../../../kiosk/mouth/player.ts';
import { SAMPLE_RATE } from '../../../kiosk/mouth/output.ts';
import type { OutputState } from '../../../kiosk/mouth/state.ts';

/** Devices that come and go when told to. */
class PretendedDevices extends EventTarget {
  loudspeakers = 1;

  enumerateDevices(): Promise<MediaDeviceInfo[]> {
    const device = (kind: MediaDeviceKind) => ({ kind, deviceId: '', groupId: '', label: '' }) as MediaDeviceInfo;
    return Promise.resolve([device('audioinput'), ...Array.from({ length: this.loudspeakers }, () => device('audiooutput'))]);
  }

  async become(loudspeakers: number): Promise<void> {
    this.loudspeakers = loudspeakers;
    this.dispatchEvent(new Event('devicechange'));
    await pause(50);
  }
}

/** A context that sounds only when its browser has come to allow it, and only after being asked again. */
class StubbornContext extends AudioContext {
  allowed = false;
  #sounds = false;

  override get state(): AudioContextState { return this.#sounds ? 'running' : 'suspended'; }

  override resume(): Promise<void> {
    if (!this.allowed) return new Promise(() => undefined);
    this.#sounds = true;
    this.dispatchEvent(new Event('statechange'));
    return Promise.resolve();
  }
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

function playerWith(options: Partial<PlayerOptions>) {
  const states: OutputState[] = [];
  const player = createPlayer({ volume: 5, changed: (state) => states.push(state), devices: undefined, ...options });
  return { player, states };
}

const BEEP = { samples: new Float32Array(SAMPLE_RATE / 10), rate: SAMPLE_RATE };

describe('the loudspeaker', () => {
  it('waits for a key when the browser wants one, and sounds after it', async () => {
    const context = new StubbornContext();
    const gestures = new EventTarget();
    const { player, states } = playerWith({ openContext: () => context, gestures });
    await player.start();
    expect(player.state).to.equal('waiting for a key');
    gestures.dispatchEvent(new Event('keydown'));
    expect(player.state).to.equal('waiting for a key', 'the browser decides, not the key alone');
    context.allowed = true;
    gestures.dispatchEvent(new Event('keydown'));
    expect(states).to.deep.equal(['waiting for a key', 'open']);
    player.close();
  });

  it('notices a loudspeaker that is unplugged and one that comes back', async () => {
    const devices = new PretendedDevices();
    const opened: AudioContext[] = [];
    const openContext = () => {
      const context = new StubbornContext({ sampleRate: SAMPLE_RATE });
      context.allowed = true;
      opened.push(context);
      return context;
    };
    const { player, states } = playerWith({ devices: devices as unknown as MediaDevices, openContext });
    await player.start();
    await devices.become(0);
    expect(player.state).to.equal('no loudspeaker');
    await devices.become(1);
    expect(player.state).to.equal('open');
    expect(states).to.deep.equal(['open', 'no loudspeaker', 'open']);
    expect(opened).to.have.length(2, 'a context bound to the old loudspeaker is not trusted');
    player.close();
  });

  it('has none from the start', async () => {
    const devices = new PretendedDevices();
    devices.loudspeakers = 0;
    const { player } = playerWith({ devices: devices as unknown as MediaDevices });
    await player.start();
    expect(player.state).to.equal('no loudspeaker');
    player.close();
  });

  it('is thought to be there when the browser tells nothing about devices', async () => {
    const context = new StubbornContext();
    context.allowed = true;
    const { player } = playerWith({ openContext: () => context });
    await player.start();
    expect(player.state).to.equal('open');
    player.close();
  });

  it('that the browser cannot open at all is told', async () => {
    const { player } = playerWith({ openContext: () => { throw new DOMException('no device', 'NotSupportedError'); } });
    await player.start();
    expect(player.state).to.equal('no loudspeaker');
    expect(await player.speech().finish()).to.equal('stuck');
    expect(await player.signal(BEEP)).to.equal('stuck');
    player.close();
  });

  it('that stands still is noticed, and opened anew', async () => {
    const opened: AudioContext[] = [];
    const openContext = () => {
      const context = new AudioContext({ sampleRate: SAMPLE_RATE });
      // Suspended by itself, behind the player's back: its clock stands still.
      void context.suspend();
      opened.push(context);
      return context;
    };
    const { player } = playerWith({ openContext, gestures: new EventTarget() });
    await player.start();
    expect(await player.signal(BEEP)).to.equal('stuck');
    expect(opened).to.have.length(2);
    player.close();
  }).timeout(10_000);
});
