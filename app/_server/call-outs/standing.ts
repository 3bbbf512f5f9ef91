import 'server-only';
import { type CallOutStanding, callOutAt } from '#core/call-outs/call-out';
import { type CallOutRow, eventsOf } from '#data/call-outs/call-outs';

/** How it stands with somebody who went in alone. */
export function standingOf(callOut: Pick<CallOutRow, 'untilAt' | 'events'>, at: Date): CallOutStanding {
  return callOutAt(callOut.untilAt.getTime(), eventsOf(callOut), at.getTime());
}
