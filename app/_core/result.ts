/**
 * An answer that may be a refusal. A refusal is the caller's to put right and carries a reason; our own mistakes are
 * breaks, and throw.
 */
export type Result<T, R> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: R };

/** @returns the answer, wrapped */
export function ok<T>(value: T): Result<T, never> {
  return { ok: true, value };
}

/** @returns a refusal for this reason */
export function refused<R>(reason: R): Result<never, R> {
  return { ok: false, reason };
}

/**
 * Holds the code to what it takes for granted.
 * @param condition what must be so
 * @param message a sentence saying what must be so, for whoever reads the break
 * @throws Error when it is not so
 */
export function invariant(condition: boolean, message: string): asserts condition {
  if (!condition) throw new Error(message);
}
