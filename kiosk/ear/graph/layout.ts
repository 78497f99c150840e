import { networkOutput, PHONE_COUNT } from './phones.ts';

/**
 * Whether a model's am/final.mdl has our phones and outputs: only then can words be given to it. It begins with a table of its phones, in Kaldi's binary
 * form, and that table must be byte for byte the one that our model has.
 */
export function hasOurPhones(finalMdl: Uint8Array): boolean {
  const ours = tableOfPhones();
  return finalMdl.length > ours.length && ours.every((byte, at) => finalMdl[at] === byte);
}

/** How many states a phone has, and for each phone and state the network's output: the beginning of a Kaldi TransitionModel. */
export function tableOfPhones(): Uint8Array<ArrayBuffer> {
  const phones = Array.from({ length: PHONE_COUNT }, (_, index) => index + 1);
  const stateThatStaysOrGoesOn = [...int32(0), ...int32(2), ...int32(0), ...float32(0.5), ...int32(1), ...float32(0.5)];
  const lastState = [...int32(-1), ...int32(0)];
  return Uint8Array.from([
    0, ...token('B<TransitionModel>'), ...token('<Topology>'),
    ...int32List(phones), ...int32List([-1, ...phones.map(() => 0)]), ...int32(1), ...int32(2), ...stateThatStaysOrGoesOn, ...lastState,
    ...token('</Topology>'), ...token('<Triples>'), ...int32(PHONE_COUNT),
    ...phones.flatMap((phone) => [...int32(phone), ...int32(0), ...int32(networkOutput(phone))]), ...token('</Triples>'),
  ]);
}

function token(text: string): number[] {
  return [...new TextEncoder().encode(`${text} `)];
}

/** A number is preceded by its size in bytes. */
function int32(value: number): number[] {
  return [4, ...raw(value)];
}

function float32(value: number): number[] {
  return [4, ...new Uint8Array(Float32Array.of(value).buffer)];
}

function int32List(values: readonly number[]): number[] {
  return [4, ...raw(values.length), ...values.flatMap(raw)];
}

function raw(value: number): number[] {
  return [...new Uint8Array(Int32Array.of(value).buffer)];
}
