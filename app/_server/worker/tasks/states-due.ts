import 'server-only';
import { now } from '../../clock';
import { askBegun } from '../../states/ask-begun';
import { callEnds } from '../../states/call-ends';

/** Every minute: calls for what has outstayed its end, and what the clock or the watts say has begun. */
export async function statesDue(): Promise<void> {
  // Calls first: nothing that goes wrong with a question is to keep them back.
  await callEnds(now());
  await askBegun(now());
}
