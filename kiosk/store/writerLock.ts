/** Who may write the journal in this browser: one page at a time. */
export interface WriterLock {
  /** Whether this page holds it from the start. */
  readonly held: boolean;
  /** Resolves when this page holds it; at once when it does already. */
  readonly granted: Promise<void>;
  release(): void;
}

/** Asks for the right to write. A page that ends, in whatever way, lets go of it, and the next in the queue has it. */
export async function askToWrite(name: string): Promise<WriterLock> {
  let release: () => void = () => undefined;
  const untilReleased = new Promise<void>((resolve) => {
    release = resolve;
  });
  const giveUp = new AbortController();
  let grant: () => void = () => undefined;
  const granted = new Promise<void>((resolve) => {
    grant = resolve;
  });
  const hold = () => {
    grant();
    return untilReleased;
  };
  const lock = `${name} journal writer`;
  const held = await new Promise<boolean>((resolve, reject) => {
    navigator.locks.request(lock, { ifAvailable: true }, (given) => {
      resolve(given !== null);
      return given === null ? undefined : hold();
    }).catch(reject);
  });
  if (!held) navigator.locks.request(lock, { signal: giveUp.signal }, hold).catch(() => undefined);
  return {
    held,
    granted,
    release: () => {
      giveUp.abort();
      release();
    },
  };
}
