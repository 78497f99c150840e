import type axe from 'axe-core';
import { everyElement } from './stage.ts';

const described = (element: Element): string => `<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}"> “${element.textContent.trim().slice(0, 40)}”`;
export const seen = (element: Element): boolean => element.checkVisibility({ visibilityProperty: true });

/** Elements with more in them than they show. One pixel is the browser's rounding. */
export function overflowing(root: Element): string[] {
  return everyElement(root).filter((element) => {
    if (!(element instanceof HTMLElement) || !seen(element) || element.classList.contains('offscreen')) return false;
    if (getComputedStyle(element).display === 'inline' || getComputedStyle(element).textOverflow === 'ellipsis') return false;
    return element.clientHeight > 0 && (element.scrollHeight > element.clientHeight + 1 || element.scrollWidth > element.clientWidth + 1);
  }).map(described);
}

/** Keys too small for a gloved finger (19 mm, 3 mm apart, at 5.2 px/mm on the smallest screen), off the screen, or too near each other. */
export function badKeys(root: Element, [width, height]: readonly [number, number]): string[] {
  const unit = Math.min(width / 80, height / 48);
  const keys = everyElement(root).filter((element) => element.tagName === 'BENCH-KEY' && seen(element));
  const boxes = keys.map((key) => ({ key, box: key.getBoundingClientRect() }));
  const bad = boxes.filter(({ box }) => box.width < 9.85 * unit || box.height < 9.85 * unit || box.left < -0.5 || box.top < -0.5 || box.right > width + 0.5 || box.bottom > height + 0.5);
  const near = boxes.filter(({ box: one }, index) => boxes.slice(index + 1).some(({ box: other }) =>
    Math.max(other.left - one.right, one.left - other.right, other.top - one.bottom, one.top - other.bottom) < 1.55 * unit));
  return [...bad.map(({ key }) => `small or off: ${described(key)}`), ...near.map(({ key }) => `near another: ${described(key)}`)];
}

/** axe is a script for the page, not a module. */
async function loadAxe(): Promise<typeof axe> {
  const page = window as unknown as { axe?: typeof axe };
  if (page.axe === undefined) {
    const script = document.createElement('script');
    script.src = '/node_modules/axe-core/axe.min.js';
    await new Promise((resolve) => {
      script.onload = resolve;
      document.head.append(script);
    });
  }
  if (page.axe === undefined) throw new Error('axe did not load');
  return page.axe;
}

/** What axe finds, with WCAG 2.2's 1.4.6 Contrast (Enhanced) and 2.5.5 Target Size (Enhanced, 44 px) on. */
export async function axeFindings(root: Element): Promise<string[]> {
  const options = {
    rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true }, region: { enabled: false }, 'page-has-heading-one': { enabled: false } },
    checks: { 'target-size': { options: { minSize: 44 } }, 'target-offset': { options: { minOffset: 44 } } },
  };
  const found = await (await loadAxe()).run(root, options as axe.RunOptions);
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target, failureSummary }) => `${JSON.stringify(target)} ${failureSummary ?? ''}`).join(' | ')}`);
}
