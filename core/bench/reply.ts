import type { Entry, JournalRecord } from '../journal/entry.ts';
import type { SheetChoice } from '../layout/paper/choice.ts';
import type { Length } from '../length/length.ts';
import type { WantedReading } from '../true/guide.ts';
import type { BoardFace } from '../true/readings.ts';
import type { GapSense, Guided, Request } from './request.ts';
import type { Screen } from './screen.ts';

/** Short tones that are understood before any word is. */
export type Signal = 'heard' | 'not understood' | 'mark' | 'due' | 'wrong' | 'done';

/** A question the bench has asked; the next answer is read in its light. */
export type Question =
  | { readonly kind: 'which'; readonly choices: readonly { readonly say: string; readonly request: Request }[] }
  | { readonly kind: 'yes or no'; readonly onYes: Request }
  | { readonly kind: 'length'; readonly size: string; readonly copy?: number }
  /** A gap or a thickness, at one place of one side of a board. */
  | ({ readonly kind: 'surface reading'; readonly of: BoardFace; readonly sense?: GapSense } & WantedReading & Guided);

/** One of several things that are told one after the other. */
export interface InTurnItem {
  readonly say: string;
  /** For the eye; without it only how far it is told. */
  readonly note?: string;
  readonly lengths?: readonly Length[];
}

/** What is too long for the ear at once: 'next', 'again' and 'back' lead through it. */
export interface InTurn {
  readonly items: readonly InTurnItem[];
  /** The one that was told last, counted from 0. */
  readonly at: number;
  /** Where it is told; in a reply, absent means the screen that is shown. */
  readonly screen?: Screen;
}

export interface Reply {
  /**
   * A phrase made for the ear; commas and full stops are pauses. Empty when there is nothing to say.
   */
  readonly say: string;
  /** The screen to go to; absent means stay. */
  readonly screen?: Screen;
  /** One line for the eye, beside or instead of what the screen draws. */
  readonly note?: string;
  readonly signal?: Signal;
  readonly question?: Question;
  /** The question stays open, but is not asked: nobody is listened to for it who does not call the bench first. */
  readonly unasked?: true;
  /** Said at the slow pace this once. */
  readonly slowly?: true;
  /** Stop what is being said. */
  readonly hush?: true;
  /** Sheets that are to be printed or written to a file. */
  readonly paper?: { readonly to: 'printer' | 'file'; readonly sheet: SheetChoice };
  /** A file that is to be written into the pieces folder, and what is in it: 'four boards are'. */
  readonly file?: { readonly name: string; readonly text: string; readonly say: string };
  /** A cutting plan is to be looked for off the page, or no more; 'over' when it was taken or is of no use any more. */
  readonly planning?: 'begin' | 'stop' | 'over';
  /** More is to be told after this; 'over' when all was. */
  readonly inTurn?: InTurn | 'over';
  /** For 'digit by digit' and 'half of that': the lengths that were said, the answer first. */
  readonly lengths?: readonly Length[];
}

export interface Response {
  /** Written down together, or not at all. */
  readonly entries: readonly Entry[];
  /** A whole journal that takes the place of the one there is, which is set aside. */
  readonly journal?: readonly JournalRecord[];
  readonly reply: Reply;
}
