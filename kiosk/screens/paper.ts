import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import type { SheetChoice } from '../../core/layout/paper/choice.ts';
import { everySheet, nameOfSheets, sheetsFor, type SheetOrder } from '../../core/layout/paper/order.ts';
import { PAPERS } from '../../core/layout/paper/paperSize.ts';
import type { SheetSet } from '../../core/layout/paper/sheet.ts';
import { sheetOrder } from '../../core/respond/paper.ts';
import type { Result } from '../../core/result.ts';
import { drawPage } from '../draw/paperPage.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';

/** What can be had on paper; of a choice, its sheets one by one, to print them or write them to a file. */
@customElement('bench-paper')
export class PaperScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .paper { display: grid; grid-template-columns: minmax(0, 1fr) 34rem; gap: 1.6rem; height: 100%; }
    .preview { min-height: 0; display: grid; place-items: center; overflow: hidden; }
    .preview svg.sheet { width: auto; height: auto; max-width: 100%; max-height: 100%; background: white; border: 0.1rem solid var(--pencil); }
    .about { height: 100%; overflow: hidden; line-height: 1.15; }
    .about h1 { font-size: 1.15em; font-weight: 700; }
    .about p { margin-top: 0.5em; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'paper' }>;
  protected fitAbout = new FitText(this, '.about', [2.6, 2.3, 2.1, 1.9, 1.7, 1.5]);
  #made: { readonly stands: readonly unknown[]; readonly sheets: Result<SheetSet, string> } | null = null;

  override willUpdate(changed?: Map<PropertyKey, unknown>): void {
    if (changed?.has('screen')) this.page = 0;
    super.willUpdate();
  }

  protected sheet(): TemplateResult {
    const { sheet } = this.screen;
    const order = this.#order();
    if (order === undefined) return html`<p class="title">No piece is on the bench. Open the menu and choose files.</p>`;
    if (sheet === undefined) return choiceGrid(this.#choices(order), this.page);
    const sheets = this.#sheets(order, sheet);
    if (!sheets.ok) return html`<p class="title">${sheets.fault}</p>`;
    const { pages, groups } = sheets.value;
    const shown = pages[this.page];
    const name = nameOfSheets(order.piece, sheet);
    return html`<div class="paper"><div class="preview">${shown === undefined ? '' : drawPage(shown, `Sheet ${this.page + 1} of the ${name}`)}</div>
      <div class="about"><h1>${name}</h1><p>${pages.length} ${pages.length === 1 ? 'sheet' : 'sheets'} of ${PAPERS[order.paper].say} paper${joinedText(groups)}</p>
        <p>sheet ${this.page + 1} of ${pages.length}</p><p>Print at 100 %, not fitted to the page. Then measure the printed bars, and tell me what they measure.</p></div></div>`;
  }

  keys(): readonly KeySpec[] {
    const { sheet } = this.screen;
    const order = this.#order();
    if (sheet === undefined || order === undefined) return keyRow('paper', { step: show({ name: 'step' }), ...this.leafKeys(), save: null, print: null, listen: { act: { kind: 'listen' } }, menu: show({ name: 'menu' }) });
    const { next } = this.leafKeys();
    const sound = this.#sheets(order, sheet).ok;
    return keyRow('paper', {
      step: show({ name: 'step' }),
      back: this.page === 0 ? { does: show({ name: 'paper' }) } : { here: () => { this.page -= 1; } },
      next,
      save: { does: { request: { kind: 'save sheets', sheet } }, disabled: !sound },
      print: { does: { request: { kind: 'print sheets', sheet } }, tone: 'now', disabled: !sound },
      listen: { act: { kind: 'listen' } },
      menu: show({ name: 'menu' }),
    });
  }

  protected pages(): number {
    const { sheet } = this.screen;
    const order = this.#order();
    if (order === undefined) return 1;
    if (sheet === undefined) return pagesOf(this.#choices(order).length);
    const sheets = this.#sheets(order, sheet);
    return sheets.ok ? sheets.value.pages.length : 1;
  }

  #order(): SheetOrder | undefined {
    return sheetOrder(this.view.bench.state, this.view.now);
  }

  /** Made anew only when what they are drawn from has changed. */
  #sheets(order: SheetOrder, sheet: SheetChoice): Result<SheetSet, string> {
    const stands = [order.piece, order.sizes, order.places, order.turns, order.rounding, order.paper, order.date, order.planned?.of, sheet];
    if (this.#made === null || stands.some((one, index) => one !== this.#made?.stands[index])) this.#made = { stands, sheets: sheetsFor(order, sheet) };
    return this.#made.sheets;
  }

  #choices(order: SheetOrder): readonly Choice[] {
    const { piece, paper } = order;
    return [
      ...everySheet(order).map((sheet): Choice => ({
        label: sheet.what === 'layout' ? labelOf(piece, sheet) : nameOfSheets(piece, sheet),
        ...(sheet.what === 'layout' ? { detail: 'layout' } : {}), does: { request: { kind: 'sheets', sheet } },
      })),
      { label: 'paper', detail: PAPERS[paper].say, does: { request: { kind: 'set', setting: { paper: paper === 'a4' ? 'letter' : 'a4' } } } },
    ];
  }
}

/** 'leg', 'leg 2' */
function labelOf({ file }: SheetOrder['piece'], { part, copy }: Extract<SheetChoice, { what: 'layout' }>): string {
  const name = file.parts.find(({ id }) => id === part)?.name ?? part;
  return copy === undefined ? name : `${name} ${copy}`;
}

function joinedText(groups: SheetSet['groups']): string {
  const joined = groups.filter(({ rows, columns }) => rows * columns > 1);
  return joined.length === 0 ? '' : `, joined ${joined.map(({ rows, columns }) => (rows === 1 ? `${columns} in a row` : columns === 1 ? `${rows} one above the other` : `in ${rows} rows of ${columns}`)).join(' and ')}`;
}

declare global {
  interface HTMLElementTagNameMap { 'bench-paper': PaperScreen }
}
