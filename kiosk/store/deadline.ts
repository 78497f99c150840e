/** What was awaited did not come in time. */
export class DeadlinePassed extends Error {
  constructor(ms: number) {
    super(`no answer within ${ms / 1000} seconds`);
    this.name = 'DeadlinePassed';
  }
}

/** The value, or DeadlinePassed when it has not come after `ms` milliseconds. */
export async function withDeadline<Value>(ms: number, value: Promise<Value>): Promise<Value> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const deadline = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new DeadlinePassed(ms)), ms);
  });
  try {
    return await Promise.race([value, deadline]);
  } finally {
    clearTimeout(timer);
  }
}
