import 'server-only';
import { ok, type Result, refused } from '#core/result';
import type { CallOutStanding } from '#core/call-outs/call-out';
import { type CallOutRow, calledFor, findCallOut } from '#data/call-outs/call-outs';
import type { SiteEntry } from '#data/sites';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { standingOf } from './standing';

/** Somebody who is in alone, and who asks. */
export interface AtHand {
  site: SiteEntry;
  callOut: CallOutRow;
  standing: CallOutStanding;
  /** Whether it is their own, they were named for it, or they were called for it. */
  asks: { isOwn: boolean; isNamed: boolean; isCalled: boolean };
}

/** A call-out that is not over, for whoever wants to do something about it. */
export async function callOutAtHand(
  who: Who,
  { site: key, callOut: id }: { site: string; callOut: string },
): Promise<Result<AtHand, Refusal>> {
  const found = await siteFor(who, 'acknowledge', key);
  if (!found.ok) return found;
  const site = found.value;
  const callOut = await findCallOut(site.id, id);
  if (!callOut) return refused({ why: 'not-found', what: 'entry' });
  const standing = standingOf(callOut, now());
  if (standing.state === 'back') return refused({ why: 'conflict', now: 'somebody said already that they are back' });
  const called = (await calledFor(site.id, [id])).get(id);
  const asks = {
    isOwn: callOut.accountId === who.id,
    isNamed: callOut.namedId === who.id,
    isCalled: called?.has(who.id) ?? false,
  };
  return ok({ site, callOut, standing, asks });
}
