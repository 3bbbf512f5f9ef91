import 'server-only';
import { now } from '../../clock';
import { askBegun } from '../../states/ask-begun';
import { callEnds } from '../../states/call-ends';

/** Every minute: what the clock or the watts say has begun, and calls for what has outstayed its end. */
export async function statesDue(): Promise<void> {
  await askBegun(now());
  await callEnds(now());
}
