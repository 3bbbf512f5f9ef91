import 'server-only';

/** When whatever was asked for before is done. */
let last: Promise<unknown> = Promise.resolve();

/**
 * Does one piece of heavy work after the other, however many ask at once, so that they do not slow each other down until
 * none is there in time.
 *
 * @param signal   breaks off the waiting, also while something asked for before goes on
 * @throws         what the work threw, or that it was broken off
 */
export async function inTurn<T>(work: () => Promise<T>, signal: AbortSignal): Promise<T> {
  signal.throwIfAborted();
  const before = last;
  const mine = (async () => {
    await before;
    signal.throwIfAborted();
    return await work();
  })();
  last = mine.catch(() => undefined);
  const over = new Promise<never>((_, refuse) => {
    signal.addEventListener('abort', () => refuse(signal.reason), { once: true });
  });
  return await Promise.race([mine, over]);
}
