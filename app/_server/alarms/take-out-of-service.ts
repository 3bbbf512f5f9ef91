import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { listMembers } from '#data/accounts/members';
import { outOfServiceRequest } from '#shape/alarms/requests';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { changeSuppressed } from './change-suppressed';
import { suppressAlarm } from './suppress-alarm';

export const takeOutOfServiceShape = outOfServiceRequest;

/** Hours of a day. */
const DAY_H = 24;

/** Takes an alarm out of service for a repair: somebody has it in hand, and it comes back by itself at its end. */
export async function takeOutOfService(
  who: Who,
  { unit, hours, ...request }: z.output<typeof takeOutOfServiceShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const site = await siteFor(who, 'alarm-out-of-service', request.site);
  if (!site.ok) return site;
  const members = (await listMembers(site.value.id)).filter(({ endedAt, isEnded }) => endedAt === null && !isEnded);
  if (request.owner !== who.id && !members.some(({ accountId }) => accountId === request.owner))
    return refused({ why: 'invalid', faults: [{ path: 'owner', message: 'must be somebody of this site' }] });
  const done = await changeSuppressed(site.value.id, (held) =>
    suppressAlarm(held, who, { ...request, kind: 'out-of-service', hours: unit === 'days' ? hours * DAY_H : hours }),
  );
  return done.ok ? ok({ site: request.site }) : done;
}
