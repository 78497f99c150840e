import type { Reply, Response } from '../bench/reply.ts';

const [OPEN, BETWEEN, CLOSE] = ['\uE000', '\uE001', '\uE002'];
const EITHER = new RegExp(`${OPEN}([^${BETWEEN}]*)${BETWEEN}([^${CLOSE}]*)${CLOSE}`, 'g');

/**
 * What the maker can say, in two forms: for the ear what to tell, for the eye the words themselves. A loudspeaker that says a whole request makes one, should the
 * microphone ever hear it. Stands in a sentence until the reply goes out (`withForms`).
 */
export function toSay(told: string, words: string): string {
  return `${OPEN}${told}${BETWEEN}${words}${CLOSE}`;
}

const forTheEar = (text: string): string => text.replaceAll(EITHER, '$1');
const forTheEye = (text: string): string => text.replaceAll(EITHER, '$2');

/** The reply with each form where it belongs; what has two of them is shown. */
export function withForms(response: Response): Response {
  const { reply } = response;
  const note = reply.note ?? (reply.say.includes(OPEN) ? reply.say : undefined);
  const formed: Reply = { ...reply, say: forTheEar(reply.say), ...(note === undefined ? {} : { note: forTheEye(note) }) };
  return { ...response, reply: formed };
}
