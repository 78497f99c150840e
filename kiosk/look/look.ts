import { css, unsafeCSS } from 'lit';
import type { CSSResult } from 'lit';
import { DARK, LIGHT } from './tokens.ts';
import type { Tokens } from './tokens.ts';

/**
 * Sizes are in rem, and 1 rem is an eightieth of the screen's width (kiosk.css): 10 px at 800 × 480, growing
 * with the screen, so that a layout proven at 800 × 480 holds on the larger ones. `--text` is 1 or 1.25, the maker's text size.
 */
export const KEY_REM = 9.9; // 19 mm at 5.2 px/mm
export const GAP_REM = 1.6; // 3 mm at 5.2 px/mm

const asProperties = (tokens: Tokens): CSSResult =>
  unsafeCSS(Object.entries(tokens).map(([name, value]) => `--${name}: ${String(value)};`).join(' '));

/** Put on the root element alone: the tokens of both themes. */
export const themes = css`
  :host { ${asProperties(LIGHT)} --text: 1; --key: ${unsafeCSS(KEY_REM)}rem; --gap: ${unsafeCSS(GAP_REM)}rem;
    --words: 'Atkinson Hyperlegible Next', 'DejaVu Sans', sans-serif; --figures: 'B612', 'DejaVu Sans', sans-serif; color-scheme: light; }
  :host([theme='dark']) { ${asProperties(DARK)} color-scheme: dark; }
  :host([larger]) { --text: 1.25; }
`;

/** Shared by every element: type, lines and the drawn patterns. */
export const look = css`
  :host { box-sizing: border-box; color: var(--ink); font-family: var(--words); }
  *, *::before, *::after { box-sizing: border-box; }
  h1, h2, p, ul, ol, dl, dd, figure { margin: 0; padding: 0; }
  ul, ol { list-style: none; }
  .small { font-size: calc(1.8rem * var(--text)); line-height: 1.2; }
  .caption { color: var(--pencil); font-size: calc(1.8rem * var(--text)); line-height: 1.15; }
  .title { font-size: calc(2.6rem * var(--text)); line-height: 1.15; font-weight: 700; }
  .figures { font-family: var(--figures); }
  .now { color: var(--now); }
  .due { background: repeating-linear-gradient(-45deg, var(--due) 0 1.2rem, var(--dueStripe) 1.2rem 2.4rem); color: var(--onDue); }
  .waste { background: repeating-linear-gradient(-45deg, transparent 0 0.7rem, var(--pencil) 0.7rem 0.8rem); }
  .offscreen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
`;
