import type { Moment } from '../clock/moment.ts';
import type { Arch } from '../faces/boards.ts';
import type { End, Face, Turn } from '../faces/face.ts';
import type { Level } from '../faces/levels.ts';
import type { Quality } from '../faces/likes.ts';
import type { TimerRequest } from '../clock/timer.ts';
import type { Measurement, SizeName } from '../piece/measurement.ts';
import type { CraftEntry } from './craft.ts';
import type { CuttingEntry } from './cutting.ts';
import type { StepId } from '../work/step.ts';
import type { EdgeEntry } from './edges.ts';
import type { Settings } from './settings.ts';

/** Everything that can be written down. Plain data; only ever added to. */
export type Entry =
  | CraftEntry
  | CuttingEntry
  /** The whole text of the file as it was given, so that nothing of it is lost. `afresh` forgets what was done on a piece of that name. */
  | { readonly kind: 'piece loaded'; readonly text: string; readonly from: string; readonly afresh?: boolean }
  | { readonly kind: 'measured'; readonly measurement: Measurement }
  | { readonly kind: 'measurement withdrawn'; readonly size: SizeName; readonly copy?: number }
  | { readonly kind: 'step done'; readonly step: StepId }
  | { readonly kind: 'step skipped'; readonly step: StepId }
  | { readonly kind: 'step reopened'; readonly step: StepId }
  | { readonly kind: 'went to step'; readonly step: StepId }
  | { readonly kind: 'faces liked'; readonly part: string; readonly copy: number; readonly faces: readonly Face[]; readonly as: Quality }
  /** Which end is up, or to which end the arches of the figure point; 'either' takes back what was told. */
  | { readonly kind: 'end liked'; readonly part: string; readonly copy: number; readonly what: 'up' | 'arch'; readonly end: End | 'either' }
  /** What counts first when the copies of a part are placed. */
  | { readonly kind: 'faces ordered'; readonly part: string; readonly order: readonly Level[] }
  | { readonly kind: 'board liked'; readonly part: string; readonly board: number; readonly arch: Arch | 'either' }
  /** Where copies go, and how each is turned as far as that was said. One place holds one copy. */
  | { readonly kind: 'legs assigned'; readonly part: string; readonly legs: readonly AssignedLeg[] }
  | { readonly kind: 'timer started'; readonly timer: TimerRequest }
  /** Adds (or with a negative number takes) time. */
  | { readonly kind: 'timer changed'; readonly timer: number; readonly addMs: number }
  | { readonly kind: 'timer held'; readonly timer: number }
  | { readonly kind: 'timer resumed'; readonly timer: number }
  | { readonly kind: 'timer acknowledged'; readonly timer: number }
  | { readonly kind: 'timer stopped'; readonly timer: number }
  /** A heartbeat worth keeping, or a clock that jumped: what the timers may stand on afterwards. */
  | { readonly kind: 'clock seen'; readonly note: 'heartbeat' | 'restarted' | 'jumped' }
  | EdgeEntry
  | { readonly kind: 'setting changed'; readonly setting: Partial<Settings> }
  | { readonly kind: 'noted'; readonly text: string }
  /** The caution was said today; not said again until tomorrow. */
  | { readonly kind: 'caution said'; readonly caution: string }
  /** Takes back every entry of one act. Undoing an undo is 'put back'. */
  | { readonly kind: 'scratched'; readonly act: number }
  | { readonly kind: 'put back'; readonly act: number };

export interface AssignedLeg {
  readonly copy: number;
  readonly place: string;
  readonly turn?: Turn;
}

/** An entry as it stands in the journal. */
export interface JournalRecord {
  /** From 1 without holes; order is by this, never by time. */
  readonly number: number;
  /** Number of the first entry that the same request wrote; what 'scratch that' takes back together. */
  readonly act: number;
  readonly at: Moment;
  readonly entry: Entry;
  /** Checksum of the record before this one; empty for the first. So the last record vouches for all. */
  readonly before: string;
  /** Over number, act, at, entry and before; see checksum.ts. */
  readonly checksum: string;
}
