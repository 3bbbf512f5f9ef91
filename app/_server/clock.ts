import 'server-only';

/**
 * The wall clock, read here and nowhere else: everything that needs the time is told it, so that a test can set it.
 *
 * @returns   the present instant
 */
export function now(): Date {
  return new Date();
}
