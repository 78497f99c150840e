import { property } from 'lit/decorators.js';
import type { SawingSettings } from '../../core/journal/cutting.ts';
import type { State } from '../../core/journal/state.ts';
import { ask } from '../hostPort.ts';
import { BenchForm } from './benchForm.ts';

/** A form of settings of the sawing: all of them on keys, or one of them asked for. Leaving what is asked goes back to all, leaving those puts the form away. */
export abstract class SettingForm extends BenchForm {
  @property({ attribute: false }) bench!: State;
  /** What is asked for; null while all are shown. */
  protected abstract asking: string | null;

  protected tell(setting: Partial<SawingSettings>): void {
    ask(this, { kind: 'set sawing', setting });
    this.asking = null;
  }

  protected override leave(): void {
    if (this.asking === null) this.left();
    else this.asking = null;
  }
}
