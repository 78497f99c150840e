/** An outcome that the caller must look at: a value, or a fault to be told to the person. */
export type Result<Value, Fault> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly fault: Fault };

export function success<Value>(value: Value): Result<Value, never> {
  return { ok: true, value };
}

export function failure<Fault>(fault: Fault): Result<never, Fault> {
  return { ok: false, fault };
}

/** Marks a branch that the types rule out; reaching it is a bug, so it throws. */
export function assertNever(value: never): never {
  throw new Error(`unhandled case: ${JSON.stringify(value)}`);
}
