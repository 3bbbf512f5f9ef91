import 'server-only';

/** ms for which a test call waits for its answer; what is not answered by then was missed. Common practice, no source. */
export const TEST_RUNS_MS = 86_400_000;

/** The instant before which tests are over. */
export function testsSince(at: Date): Date {
  return new Date(at.getTime() - TEST_RUNS_MS);
}
