import { BrokenArchive } from '../../kiosk/ear/unpack.ts';

/** What is wrong with a speech model: where, what, and what its owner can do. */
export interface ModelFault {
  /** A file of the model, or the file that was given. */
  readonly where: string;
  readonly what: string;
  readonly todo: string;
}

/** The files of a model by their paths below its own folder ('am/final.mdl'). */
export type Files = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;

export const GET_ANOTHER = 'Get the model again, whole, or take another one.';

/** One line for a terminal or a screen; what a file says of itself may hold signs that would take a terminal over. */
export function writeFault({ where, what, todo }: ModelFault): string {
  return `${where}: ${what}. ${todo}`.replace(/\p{C}/gu, '?');
}

/** What an unpacker found wrong. @throws what is no fault of an archive */
export function archiveFault(where: string, error: unknown): ModelFault {
  if (error instanceof BrokenArchive) return { where, what: error.message, todo: GET_ANOTHER };
  const { code, message } = error as NodeJS.ErrnoException;
  if (code === 'EACCES' || code === 'EPERM') return { where, what: 'it may not be read', todo: 'Give yourself the right to read it.' };
  if (code === undefined) throw error;
  return { where, what: `it cannot be read (${message})`, todo: GET_ANOTHER };
}
