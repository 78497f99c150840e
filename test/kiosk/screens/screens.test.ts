import { expect } from '@open-wc/testing';
import type axe from 'axe-core';
import '../../../kiosk/kiosk.ts';
import type { BenchKiosk } from '../../../kiosk/kiosk.ts';
import type { KioskView } from '../../../kiosk/hostPort.ts';
import { SAMPLES } from '../sampleViews.ts';
import { SCREEN_SIZES, clearStage, everyElement, stage } from '../stage.ts';

/** axe is a script for the page, not a module. */
async function loadAxe(): Promise<typeof axe> {
  const page = window as unknown as { axe?: typeof axe };
  if (page.axe === undefined) {
    const script = document.createElement('script');
    script.src = '/node_modules/axe-core/axe.min.js';
    await new Promise((resolve) => { script.onload = resolve; document.head.append(script); });
  }
  if (page.axe === undefined) throw new Error('axe did not load');
  return page.axe;
}

async function kioskOnStage(view: KioskView, size: readonly [number, number], theme: 'light' | 'dark', larger: boolean): Promise<BenchKiosk> {
  const kiosk = document.createElement('bench-kiosk');
  const { state } = view.bench;
  kiosk.view = { ...view, theme, bench: { ...view.bench, state: { ...state, settings: { ...state.settings, textPercent: larger ? 125 : 100 } } } };
  await stage(kiosk, size, { theme, larger });
  return kiosk;
}

const described = (element: Element): string => `<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}"> “${(element.textContent).trim().slice(0, 40)}”`;
const seen = (element: Element): boolean => element.checkVisibility({ visibilityProperty: true });

/** Elements with more in them than they show. One pixel is the browser's rounding. */
function overflowing(kiosk: BenchKiosk): string[] {
  return everyElement(kiosk).filter((element) => {
    if (!(element instanceof HTMLElement) || !seen(element) || element.classList.contains('offscreen')) return false;
    if (getComputedStyle(element).display === 'inline' || getComputedStyle(element).textOverflow === 'ellipsis') return false;
    return element.clientHeight > 0 && (element.scrollHeight > element.clientHeight + 1 || element.scrollWidth > element.clientWidth + 1);
  }).map(described);
}

/** Keys too small for a gloved finger, off the screen, or too near each other. */
function badKeys(kiosk: BenchKiosk, [width, height]: readonly [number, number]): string[] {
  const unit = Math.min(width / 80, height / 48);
  const keys = everyElement(kiosk).filter((element) => element.tagName === 'BENCH-KEY' && seen(element));
  const boxes = keys.map((key) => ({ key, box: key.getBoundingClientRect() }));
  const bad = boxes.filter(({ box }) => box.width < 9.85 * unit || box.height < 9.85 * unit || box.left < -0.5 || box.top < -0.5 || box.right > width + 0.5 || box.bottom > height + 0.5);
  const near = boxes.filter(({ box: one }, index) => boxes.slice(index + 1).some(({ box: other }) =>
    Math.max(other.left - one.right, one.left - other.right, other.top - one.bottom, one.top - other.bottom) < 1.55 * unit));
  return [...bad.map(({ key }) => `small or off: ${described(key)}`), ...near.map(({ key }) => `near another: ${described(key)}`)];
}

describe('every screen', () => {
  afterEach(clearStage);

  for (const [name, view] of Object.entries(SAMPLES)) {
    for (const size of SCREEN_SIZES) {
      for (const larger of [false, true]) {
        it(`${name} shows all it has at ${size.join(' × ')}${larger ? ' with text at 125 %' : ''}`, async () => {
          const kiosk = await kioskOnStage(view, size, 'light', larger);
          expect(overflowing(kiosk)).to.deep.equal([]);
          expect(badKeys(kiosk, size)).to.deep.equal([]);
        });
      }
    }

    it(`${name} gives every key of the number pad one meaning`, async () => {
      const kiosk = await kioskOnStage(view, [800, 480], 'light', false);
      const pads = everyElement(kiosk).filter((element) => element.tagName === 'BENCH-KEY' && seen(element)).flatMap((key) => (key as HTMLElementTagNameMap['bench-key']).spec?.pad ?? []);
      expect(pads.length).to.equal(new Set(pads).size, pads.join(' '));
    });

    for (const theme of ['light', 'dark'] as const) {
      // WCAG 2.2: 1.4.6 Contrast (Enhanced), and 2.5.5 Target Size (Enhanced), 44 px.
      it(`${name} has nothing for axe to find in the ${theme} theme`, async () => {
        const kiosk = await kioskOnStage(view, [800, 480], theme, false);
        const found = await (await loadAxe()).run(kiosk, {
          rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true }, region: { enabled: false }, 'page-has-heading-one': { enabled: false } },
          checks: { 'target-size': { options: { minSize: 44 } }, 'target-offset': { options: { minOffset: 44 } } },
        } as axe.RunOptions);
        expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target, failureSummary }) => `${JSON.stringify(target)} ${failureSummary ?? ''}`).join(' | ')}`)).to.deep.equal([]);
      });
    }
  }
});
