import { expect } from '@open-wc/testing';
import { KEY_TABLE } from '../../../kiosk/keys/keyTable.ts';
import type { HearingView } from '../../../kiosk/hostPort.ts';
import { MiniHost } from '../miniHost.ts';
import { SAMPLES } from '../sampleViews.ts';
import { clearStage, everyElement, settled } from '../stage.ts';

const textOf = (host: MiniHost) => everyElement(host.kiosk).filter((element) => element.tagName === 'BENCH-MICROPHONE').map((screen) => screen.shadowRoot?.textContent ?? '').join(' ').replace(/\s+/g, ' ');

/** A host whose page is open, with this to show. */
async function trying(hearing: Partial<HearingView> = {}): Promise<MiniHost> {
  const host = await MiniHost.start();
  host.ask({ kind: 'show', screen: { name: 'microphone' } });
  host.kiosk.view = { ...host.view, hearing: { ...host.view.hearing, ...hearing } };
  await settled();
  return host;
}

describe('the page to try the microphone', () => {
  afterEach(clearStage);

  it('is reached from the settings and left again, with the number pad alone', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'show', screen: { name: 'settings' } });
    await settled();
    await host.pad('⏎'); // more settings
    await host.pad(host.keys().find(({ spec }) => spec?.label === 'try the microphone')?.spec?.pad ?? '');
    expect(host.screen).to.deep.equal({ name: 'microphone' });
    await host.pad(KEY_TABLE.microphone.leave);
    expect(host.screen).to.deep.equal({ name: 'settings' });
  });

  it('shows what was heard with what it would do, and marks what was not meant for the bench', async () => {
    const host = await trying(SAMPLES['microphone, at its fullest']?.hearing);
    const text = textOf(host);
    expect(text).to.contain('bench record leg two width three and five sixteenths: would write down leg two');
    expect(text).to.contain('Heard “bench” 3 times');
    expect(text).to.contain('cannot hear kumiko, stretcher, stretchers, dovetail, rabbet, tenon and 2 more');
    expect(text).to.contain('guesses how yakumono is said');
    expect(text).to.contain('speech model a-large-general-model-of-my-own-0.22.zip, loaded in 12.3 s');
  });

  it('says what is wrong with the sound, and what to do', async () => {
    const host = await trying(SAMPLES['microphone, faults']?.hearing);
    expect(textOf(host)).to.contain('Loud sounds are cut off: turn the microphone’s input level down');
  });

  it('plays back, goes on to the next microphone and model, and listens, by its keys', async () => {
    const host = await trying(SAMPLES['microphone, at its fullest']?.hearing);
    host.kiosk.view = { ...(host.kiosk.view ?? host.view), microphones: SAMPLES['microphone, at its fullest']?.microphones ?? [] };
    await settled();
    await host.pad('1');
    await host.pad('3*2');
    expect(host.acts).to.deep.equal([{ kind: 'play back' }, { kind: 'choose model', name: 'built-in' }, { kind: 'listen' }]);
    expect(host.requests.at(-1)).to.deep.equal({ kind: 'set', setting: { microphone: 'Built-in' } });
  });

  it('has nothing to play back before anything was said, and no second model to choose', async () => {
    const host = await trying({ trial: { peakDb: -60, calls: 0, heard: [], faults: [], playableSeconds: 0, playing: false } });
    await host.pad('123');
    expect(host.acts).to.deep.equal([]);
  });

  it('takes nothing back from here, for that would be written down', async () => {
    const host = await trying();
    const { length } = host.requests;
    const down = new KeyboardEvent('keydown', { code: 'Backspace', key: 'Backspace', location: 0, bubbles: true, composed: true, cancelable: true });
    host.kiosk.dispatchEvent(down);
    await settled();
    expect(host.requests).to.have.length(length);
  });
});

describe('the settings', () => {
  afterEach(clearStage);

  it('go on to the next speech model of those that can be used', async () => {
    const host = await MiniHost.start();
    host.ask({ kind: 'show', screen: { name: 'settings' } });
    host.kiosk.view = { ...host.view, hearing: { ...host.view.hearing, models: [{ name: 'built-in', chosen: true, usable: true }, { name: 'bad.zip', chosen: false, usable: false }, { name: 'own.zip', chosen: false, usable: true }] } };
    await settled();
    await host.touch('more settings', 'speech model');
    expect(host.acts).to.deep.equal([{ kind: 'choose model', name: 'own.zip' }]);
  });
});
