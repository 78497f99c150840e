import { expect } from '@open-wc/testing';
import '../../../kiosk/kiosk.ts';
import '../../../kiosk/screens/later.ts';
import type { BenchKiosk } from '../../../kiosk/kiosk.ts';
import { BenchKey } from '../../../kiosk/keys/benchKey.ts';
import type { KioskView } from '../../../kiosk/hostPort.ts';
import { axeFindings, badKeys, scrolling, seen, spoiltText } from '../inspect.ts';
import { MiniHost } from '../miniHost.ts';
import { SAMPLES } from '../sampleViews.ts';
import { SCREEN_SIZES, clearStage, everyElement, settled, stage } from '../stage.ts';

async function kioskOnStage(view: KioskView, size: readonly [number, number], theme: 'light' | 'dark', larger: boolean): Promise<BenchKiosk> {
  const kiosk = document.createElement('bench-kiosk');
  const { state } = view.bench;
  kiosk.view = { ...view, theme, bench: { ...view.bench, state: { ...state, settings: { ...state.settings, textPercent: larger ? 125 : 100 } } } };
  await stage(kiosk, size, { theme, larger });
  return kiosk;
}

function padsOf(kiosk: BenchKiosk): string[] {
  return everyElement(kiosk).filter((element) => element instanceof BenchKey && seen(element)).flatMap((key) => (key instanceof BenchKey ? (key.spec?.pad ?? []) : []));
}

describe('every screen', () => {
  afterEach(clearStage);

  for (const [name, view] of Object.entries(SAMPLES)) {
    for (const size of SCREEN_SIZES) {
      for (const larger of [false, true]) {
        it(`${name} shows all it has at ${size.join(' × ')}${larger ? ' with text at 125 %' : ''}`, async () => {
          const kiosk = await kioskOnStage(view, size, 'light', larger);
          expect(spoiltText(kiosk)).to.deep.equal([]);
          expect(scrolling(kiosk)).to.deep.equal([]);
          expect(badKeys(kiosk, size)).to.deep.equal([]);
        });
      }
    }

    it(`${name} gives every key of the number pad one meaning, and has nothing for axe to find`, async () => {
      const kiosk = await kioskOnStage(view, [800, 480], 'light', false);
      const pads = padsOf(kiosk);
      expect(pads.length).to.equal(new Set(pads).size, pads.join(' '));
      expect(await axeFindings(kiosk)).to.deep.equal([]);
    });

    it(`${name} has contrast enough in the dark theme`, async () => {
      expect(await axeFindings(await kioskOnStage(view, [800, 480], 'dark', false), 'colours')).to.deep.equal([]);
    });
  }
});

describe('the number is the hero', () => {
  afterEach(clearStage);

  // 16 minutes of arc at least (MIL-STD-1472, ISO 9241-303, from memory) at 1.5 m is a capital of 7 mm; B612's figures are 0.7 em high or more.
  for (const name of Object.keys(SAMPLES).filter((each) => each.startsWith('size'))) {
    it(`${name} can be read from a metre and a half away`, async () => {
      const view = SAMPLES[name];
      if (view === undefined) throw new Error(name);
      for (const larger of [false, true]) {
        const kiosk = await kioskOnStage(view, [800, 480], 'light', larger);
        const hero = everyElement(kiosk).filter((element) => element.parentElement?.classList.contains('hero') === true).flatMap((text) => [...(text.shadowRoot?.querySelectorAll('.whole, .top, .bottom') ?? [])]);
        expect(hero.length).to.be.greaterThan(0);
        for (const figure of hero) expect((Number.parseFloat(getComputedStyle(figure).fontSize) * 0.7) / 5.2, figure.textContent).to.be.at.least(7);
      }
    });
  }
});

/** What lies behind a key and is nowhere in the bench's state: by the keys that lead there from the step. */
const BEHIND: Readonly<Record<string, readonly string[]>> = {
  'steps of an operation': ['more', 'menu', 'what is left', 'rough crosscut'],
  'a new clock': ['more', 'menu', 'clocks', 'new clock'],
  'reckoning, typing a size': ['more', 'menu', 'reckoning', 'new size', '3', '1', 'and'],
  'reckoning, counting': ['more', 'menu', 'reckoning', 'new size', '3', 'OK', 'spaces'],
  'key card': ['more', 'menu', 'what can I say', 'key card'],
  'key card, second page': ['more', 'menu', 'what can I say', 'key card', 'next'],
  'a new piece, its name': ['more', 'menu', 'files', 'new piece'],
  'a new piece, a length': ['more', 'menu', 'files', 'new piece', 'next'],
  'a new piece, a choice': ['more', 'menu', 'files', 'new piece', 'next', 'OK', 'OK', 'OK', 'OK', 'OK'],
  'a new piece, all of it': ['more', 'menu', 'files', 'new piece', 'next', 'OK', 'OK', 'OK', 'OK', 'OK', 'laminated', '3', 'OK', 'OK', 'OK', 'none', 'hard maple', 'PVA', 'drying oil'],
  'a new board, all of it': ['more', 'menu', 'next', 'boards', 'new board', '9', '6', 'OK', '8', 'OK'],
  'what is wrong with a board': ['more', 'menu', 'next', 'boards', 'new board', '9', '6', 'OK', '8', 'OK', 'on the rack', 'add defect', 'knot', '3', '0', 'OK', '3', '4', 'OK'],
  'how it is sawn': ['more', 'menu', 'next', 'cutting plan', 'sizes'],
  'the pad, at its fullest': ['more', 'menu', 'parts', '4 legs', 'width', 'record', '9', '9', 'and', '6', '3', 'sixty-fourths'],
  'the pad, refusing': ['more', 'menu', 'parts', '4 legs', 'width', 'record', '7', '1', 'eighths'],
};

describe('every page behind a key', () => {
  afterEach(clearStage);

  for (const [name, keys] of Object.entries(BEHIND)) {
    it(`${name} shows all it has, in either text size, and axe finds nothing`, async () => {
      const host = await MiniHost.start();
      await host.touch(...keys);
      for (const larger of [false, true]) {
        const { view } = host;
        const { state } = view.bench;
        host.kiosk.view = { ...view, bench: { ...view.bench, state: { ...state, settings: { ...state.settings, textPercent: larger ? 125 : 100 } } } };
        document.querySelector('#stage')?.toggleAttribute('larger', larger);
        await settled();
        expect(spoiltText(host.kiosk), larger ? 'at 125 %' : '').to.deep.equal([]);
        expect(badKeys(host.kiosk, [800, 480])).to.deep.equal([]);
      }
      expect(await axeFindings(host.kiosk)).to.deep.equal([]);
      const pads = padsOf(host.kiosk);
      expect(pads.length).to.equal(new Set(pads).size, pads.join(' '));
    });
  }
});
