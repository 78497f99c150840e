import type { JournalRecord } from '../../core/journal/entry.ts';

/** Where a copy of the journal ends. Checksums are chained, so the last one vouches for all before it. */
export interface End {
  /** 0 when it is empty. */
  readonly lastNumber: number;
  /** Empty when it is empty. */
  readonly lastChecksum: string;
}

/** One of the two places where the journal is kept. What it holds is not believed: readers check it. */
export interface Copy {
  /** As it is said in a sentence: 'the browser's database', 'the journal's file'. */
  readonly place: string;
  /** Where it ends now; opens it again when that is needed. @throws CopyFault */
  end(): Promise<End>;
  /** What it holds after the record of that number, in order. @throws CopyFault */
  readAfter(number: number): Promise<readonly unknown[]>;
  /** Adds records, all or none, on the disk when it resolves. @throws CopyFault */
  append(records: readonly JournalRecord[]): Promise<void>;
  /** Moves what stands after `number` out of the journal; nothing is thrown away. @throws CopyFault */
  setAsideAfter(number: number, end: End): Promise<void>;
  close(): void;
}

export type CopyFaultKind =
  /** The disk or the browser's share of it is full. */
  | 'no space'
  /** It does not answer, now. */
  | 'away'
  /** It holds something else at those numbers. */
  | 'conflict'
  /** It was written by a newer bench. */
  | 'newer'
  /** It cannot be used: refused, damaged, or failing in a way of its own. */
  | 'broken';

/** A copy could not do what was asked; nothing was half done. */
export class CopyFault extends Error {
  readonly kind: CopyFaultKind;

  /** @param sentence what is the matter, for the person, without the full stop */
  constructor(kind: CopyFaultKind, sentence: string) {
    super(sentence);
    this.kind = kind;
  }
}

/** Any failure as a fault of a copy. */
export function asFault(error: unknown): CopyFault {
  return error instanceof CopyFault ? error : new CopyFault('broken', error instanceof Error ? error.message : String(error));
}
