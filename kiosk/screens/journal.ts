import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { describeEntry } from '../../core/respond/describeAct.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { LeafingScreen } from './leafing.ts';

const LINES_PER_PAGE = 7;
const LONGEST_LINE = 110;

/** What was written down, newest first; what was scratched is struck through. */
@customElement('bench-journal')
export class JournalScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, css`
    .journal { display: grid; grid-template-rows: repeat(${LINES_PER_PAGE}, auto); align-content: start; height: 100%; overflow: hidden; }
    li { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 1.2rem; align-items: center; border-bottom: 0.1rem solid var(--pencil); line-height: 1.1; padding: 0.45em 0; }
    .when { white-space: nowrap; font-family: var(--figures); color: var(--pencil); font-size: 0.85em; }
    .scratched { text-decoration: line-through; text-decoration-thickness: 0.3rem; }
    .last { font-weight: 700; }
  `];

  protected fitLines = new FitText(this, '.journal', [2.1, 1.9, 1.7, 1.55, 1.4, 1.25]);

  protected sheet(): TemplateResult {
    const lines = this.#lines();
    if (lines.length === 0) return html`<p class="title">Nothing is written down yet.</p>`;
    const { standing, scratched } = this.view.bench.acts;
    return html`<ol class="journal">${lines.slice(this.page * LINES_PER_PAGE, (this.page + 1) * LINES_PER_PAGE).map(({ record, text }) => html`<li>
      <span class="when">${whenText(record)}</span><span class="${scratched.includes(record.act) ? 'scratched' : ''} ${record.act === standing.at(-1) ? 'last' : ''}">${text}</span></li>`)}</ol>`;
  }

  keys(): readonly KeySpec[] {
    const { standing, scratched } = this.view.bench.acts;
    return keyRow('journal', {
      step: show({ name: 'step' }),
      ...this.leafKeys(),
      'put back': { does: { request: { kind: 'put back' } }, disabled: scratched.length === 0 },
      'scratch that': { does: { request: { kind: 'scratch that' } }, disabled: standing.length === 0 },
      menu: show({ name: 'menu' }),
    });
  }

  protected pages(): number {
    return Math.max(1, Math.ceil(this.#lines().length / LINES_PER_PAGE));
  }

  #lines(): readonly { readonly record: JournalRecord; readonly text: string }[] {
    const { bench } = this.view;
    return bench.records.map((record) => ({ record, text: shortened(describeEntry(bench, record.entry)) })).filter(({ text }) => text !== '').reverse();
  }
}

/** A note may be long; what it begins with tells which it is. */
function shortened(text: string): string {
  return text.length > LONGEST_LINE ? `${text.slice(0, LONGEST_LINE)} …` : text;
}

/** The time of day if it could be trusted then, else the entry's number, which always can. */
function whenText({ at, number }: JournalRecord): string {
  return at.wallTrusted ? new Date(at.wallMs).toLocaleString('en-US', { month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit' }) : `no. ${number}`;
}

declare global {
  interface HTMLElementTagNameMap { 'bench-journal': JournalScreen }
}
