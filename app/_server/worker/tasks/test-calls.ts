import 'server-only';
import { dueTestCalls } from '../../calls/due-test-calls';
import { now } from '../../clock';

/** Calls every ten minutes whoever is due a test call, and measures what the record says of people. */
export async function testCalls(): Promise<void> {
  await dueTestCalls(now());
}
