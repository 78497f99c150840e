import { fixtureCleanup, nextFrame } from '@open-wc/testing';
import { look, themes } from '../../kiosk/look/look.ts';

export interface StageLook {
  readonly theme?: 'light' | 'dark';
  readonly larger?: boolean;
}

const FONTS: Readonly<Record<string, string>> = {
  'fonts/atkinson-400.woff2': 'atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2',
  'fonts/atkinson-700.woff2': 'atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2',
  'fonts/b612-400.woff2': 'b612/files/b612-latin-400-normal.woff2',
  'fonts/b612-700.woff2': 'b612/files/b612-latin-700-normal.woff2',
};

/** The screens the kiosk is made for, in CSS pixels. */
export const SCREEN_SIZES = [[800, 480], [1024, 600], [1280, 800]] as const;

let ready: Promise<void> | undefined;

/** The kiosk's own page style and fonts, as the server gives them. */
async function dressPage(): Promise<void> {
  let text = await (await fetch('/kiosk/kiosk.css')).text();
  for (const [served, source] of Object.entries(FONTS)) text = text.replace(served, `/node_modules/@fontsource/${source}`);
  const style = document.createElement('style');
  style.textContent = text;
  document.head.append(style);
  await Promise.all(['400 20px "Atkinson Hyperlegible Next"', '700 20px "Atkinson Hyperlegible Next"', '400 20px B612', '700 20px B612'].map((font) => document.fonts.load(font)));
}

/** A place of exactly this size to put an element on, with the rem that the kiosk has at that size. */
export async function stage(element: HTMLElement, [width, height]: readonly [number, number] = [800, 480], { theme = 'light', larger = false }: StageLook = {}): Promise<void> {
  await (ready ??= dressPage());
  document.querySelector('#stage')?.remove();
  const place = document.createElement('div');
  place.id = 'stage';
  place.style.cssText = `position: fixed; left: 0; top: 0; width: ${width}px; height: ${height}px; overflow: hidden; background: var(--paper);`;
  place.setAttribute('theme', theme);
  place.toggleAttribute('larger', larger);
  place.attachShadow({ mode: 'open' }).innerHTML = '<slot></slot>';
  if (place.shadowRoot !== null) place.shadowRoot.adoptedStyleSheets = [themes, look].flatMap((each) => each.styleSheet ?? []);
  document.documentElement.style.fontSize = `${Math.min(width / 80, height / 48)}px`;
  element.style.width = '100%';
  element.style.height = '100%';
  place.append(element);
  document.body.append(place);
  await settled();
}

/** After every element has drawn itself and fitted its text. */
export async function settled(): Promise<void> {
  for (let round = 0; round < 4; round++) await nextFrame();
}

export function clearStage(): void {
  document.querySelector('#stage')?.remove();
  fixtureCleanup();
}

/** Every element below, through shadow roots; that of `root` itself among them. */
export function everyElement(root: Element): Element[] {
  return [...(root.shadowRoot?.querySelectorAll('*') ?? []), ...root.querySelectorAll('*')].flatMap((each) => (each.shadowRoot === null ? [each] : [each, ...everyElement(each)]))
    .filter((each, index, all) => all.indexOf(each) === index);
}
