import { state } from 'lit/decorators.js';
import type { Does } from '../keys/keySpec.ts';
import { BenchScreen } from './benchScreen.ts';

/** A screen that is leafed through: which page lies open is nobody's business but its own. */
export abstract class LeafingScreen extends BenchScreen {
  @state() protected page = 0;

  /** How many pages there are, 1 at least. */
  protected abstract pages(): number;

  override willUpdate(): void {
    this.page = Math.min(this.page, this.pages() - 1);
  }

  /** The keys that leaf, where there is somewhere to leaf to. */
  protected leafKeys(): { readonly back: { readonly does: Does; readonly disabled: boolean } | null; readonly next: { readonly does: Does; readonly disabled: boolean } | null } {
    const pages = this.pages();
    if (pages === 1) return { back: null, next: null };
    return {
      back: { does: { here: () => { this.page -= 1; } }, disabled: this.page === 0 },
      next: { does: { here: () => { this.page += 1; } }, disabled: this.page >= pages - 1 },
    };
  }

  /** '2 of 5', or nothing to say. */
  protected pageText(): string {
    return this.pages() === 1 ? '' : `page ${this.page + 1} of ${this.pages()}`;
  }
}
