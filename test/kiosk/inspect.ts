import type axe from 'axe-core';
import { everyElement } from './stage.ts';

const described = (element: Element): string => `<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}"> “${element.textContent.trim().slice(0, 40)}”`;
export const seen = (element: Element): boolean => element.checkVisibility({ visibilityProperty: true });

interface Ink { readonly text: string; readonly node: Text; readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }

/** Every line of text that can be seen, as a box around its ink: capitals to descenders, without the leading of the line. */
function inkOf(root: Element): Ink[] {
  const holders = [root, ...everyElement(root)].filter((element) => seen(element) && !element.closest('.offscreen'));
  return holders.flatMap((element) => [...element.childNodes].flatMap((node) => {
    if (!(node instanceof Text) || node.data.trim() === '') return [];
    const range = document.createRange();
    range.selectNodeContents(node);
    return [...range.getClientRects()].filter(({ width }) => width > 0).map(({ left, top, right, bottom, height }): Ink =>
      ({ text: node.data.trim().slice(0, 40), node, left, right, top: top + height * 0.22, bottom: bottom - height * 0.14 }));
  }));
}

/** Boxes around the node that cut off what goes beyond them. */
function clipsOf(node: Node): DOMRect[] {
  const clips: DOMRect[] = [];
  for (let at = parentOf(node); at instanceof Element; at = parentOf(at)) {
    if (at instanceof HTMLElement && getComputedStyle(at).overflow !== 'visible' && getComputedStyle(at).textOverflow !== 'ellipsis') clips.push(at.getBoundingClientRect());
    if (at.id === 'stage') break;
  }
  return clips;
}

/** The parent as it is drawn: out of slots and shadow roots. */
function parentOf(node: Node): Node | null {
  if (node instanceof Element && node.assignedSlot !== null) return node.assignedSlot;
  return node.parentNode instanceof ShadowRoot ? node.parentNode.host : node.parentNode;
}

/** Text that is cut off by a box around it or by the edge of the screen, and text that lies over other text. */
export function spoiltText(root: Element): string[] {
  const ink = inkOf(root);
  const cut = ink.filter(({ node, left, top, right, bottom }) => clipsOf(node).some((clip) => left < clip.left - 1.5 || top < clip.top - 1.5 || right > clip.right + 1.5 || bottom > clip.bottom + 1.5));
  const over = ink.filter((one, index) => ink.slice(index + 1).some((other) => one.node !== other.node
    && Math.min(one.right, other.right) - Math.max(one.left, other.left) > 2 && Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 2));
  return [...cut.map(({ text }) => `cut off: ${text}`), ...over.map(({ text }) => `over other text: ${text}`)];
}

/** Whether anything scrolls, or would have to be scrolled to. */
export function scrolling(root: Element): string[] {
  return [root, ...everyElement(root)].filter((element) => ['auto', 'scroll'].includes(getComputedStyle(element).overflowY)).map(described);
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

/** What axe finds, with WCAG 2.2's 1.4.6 Contrast (Enhanced) and 2.5.5 Target Size (Enhanced, 44 px) on; or of colours alone, where nothing else is another. */
export async function axeFindings(root: Element, about: 'all' | 'colours' = 'all'): Promise<string[]> {
  const options = {
    rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true }, region: { enabled: false }, 'page-has-heading-one': { enabled: false } },
    ...(about === 'colours' ? { runOnly: { type: 'rule', values: ['color-contrast', 'color-contrast-enhanced'] } } : {}),
    checks: { 'target-size': { options: { minSize: 44 } }, 'target-offset': { options: { minOffset: 44 } } },
  };
  const found = await (await loadAxe()).run(root, options as axe.RunOptions);
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target, failureSummary }) => `${JSON.stringify(target)} ${failureSummary ?? ''}`).join(' | ')}`);
}
