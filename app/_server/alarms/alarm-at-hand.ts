import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { findOccurrence } from '#data/alarms/told';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** A time that an alarm was raised, of a site whose alarms somebody may answer. */
export interface AlarmAtHand {
  siteId: string;
  told: NonNullable<Awaited<ReturnType<typeof findOccurrence>>>;
}

/** The alarm that somebody answers, notes something of or resets. @returns a refusal when they may not, or there is none */
export async function alarmAtHand(
  who: Who,
  { site: key, occurrence }: { site: string; occurrence: string },
): Promise<Result<AlarmAtHand, Refusal>> {
  const site = await siteFor(who, 'acknowledge', key);
  if (!site.ok) return site;
  const told = await findOccurrence(site.value.id, occurrence);
  return told ? ok({ siteId: site.value.id, told }) : refused({ why: 'not-found', what: 'alarm' });
}
