import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { findSuppressed } from '#data/alarms/suppressions';
import { endSuppressionRequest } from '#shape/alarms/requests';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { changeSuppressed } from './change-suppressed';

export const endSuppressionShape = endSuppressionRequest;

/**
 * Ends before its time what keeps an alarm from calling. What is suppressed by design ends with its operating state, and in no
 * other way. An alarm that is still active calls at once, and has to be acknowledged afresh.
 */
export async function endSuppression(
  who: Who,
  { site: key, run, note }: z.output<typeof endSuppressionShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const site = await siteFor(who, 'shelve-alarm', key);
  if (!site.ok) return site;
  const found = await findSuppressed(site.value.id, run);
  if (!found || found.kind === 'by-design') return refused({ why: 'not-found', what: 'alarm' });
  if (found.kind === 'out-of-service' && !may(who, 'alarm-out-of-service', key)) return refused({ why: 'not-allowed' });
  const done = await changeSuppressed(site.value.id, async ({ doings }) => {
    const row = doings.suppressedBy(found.alarmId).find((one) => one.runId === run);
    if (!row) return refused({ why: 'conflict', now: 'That had ended already.' });
    await doings.unsuppress(row, who.id, note === '' ? undefined : note);
    return ok(null);
  });
  return done.ok ? ok({ site: key }) : done;
}
