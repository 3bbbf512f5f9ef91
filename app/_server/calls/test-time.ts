import 'server-only';
import { TEST_RUNS_MS } from '#core/alarms/test-calls';

/** The instant before which test calls are over, answered or not. */
export function testsSince(at: Date): Date {
  return new Date(at.getTime() - TEST_RUNS_MS);
}
