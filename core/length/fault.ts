import { failure, type Result } from '../result.ts';

/** Why a text or an utterance is no length: told to the person as it stands. */
export interface LengthFault {
  readonly found: string;
  readonly expected: string;
  /** A whole sentence: what was found, what is wrong with it, what to do. */
  readonly message: string;
}

export function lengthFault(found: string, wrong: string, expected: string): Result<never, LengthFault> {
  return failure({ found, expected, message: `${found === '' ? '' : `“${found}”: `}${wrong}. Expected ${expected}.` });
}
