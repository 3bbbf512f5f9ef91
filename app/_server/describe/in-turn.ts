import 'server-only';

/** When whatever was asked for before is done. */
let last: Promise<unknown> = Promise.resolve();

/**
 * Does one piece of heavy work after the other, however many ask at once, so that they do not slow each other down until
 * none is there in time.
 *
 * @param signal   breaks off the waiting
 * @throws         what the work threw, or that it was broken off
 */
export async function inTurn<T>(work: () => Promise<T>, signal: AbortSignal): Promise<T> {
  const before = last;
  const mine = (async () => {
    await before;
    signal.throwIfAborted();
    return await work();
  })();
  last = mine.catch(() => undefined);
  return await mine;
}
