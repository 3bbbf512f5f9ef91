import 'server-only';
import { isNeverSuppressed, longestH, type SuppressionKind } from '#core/alarms/life/suppression';
import { ok, type Result, refused } from '#core/result';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import type { HeldAlarms } from './change-suppressed';

/** What somebody asks for. */
export interface Wanted {
  /** Key of the site. */
  site: string;
  alarm: string;
  kind: Exclude<SuppressionKind, 'by-design'>;
  hours: number;
  reason: string;
  owner?: string;
}

const HOUR_MS = 3_600_000;

/**
 * Keeps an alarm from calling, with an end and a reason. One that is never suppressed needs a lead, and a short end: low
 * oxygen does not wait, and a probe that is being changed must not wake everybody either.
 */
export async function suppressAlarm(
  { site, doings, at }: HeldAlarms,
  who: Who,
  { site: key, alarm: id, kind, hours, reason, owner }: Wanted,
): Promise<Result<null, Refusal>> {
  const alarm = site.alarms.get(id);
  if (!alarm) return refused({ why: 'not-found', what: 'alarm' });
  const isNever = isNeverSuppressed(alarm.system, alarm.definition);
  if (isNever && !may(who, 'alarm-out-of-service', key))
    return refused({
      why: 'invalid',
      faults: [
        {
          path: 'alarm',
          message: 'is one that only a lead may keep from calling: it tells of what harms within hours',
        },
      ],
    });
  const most = longestH(kind, alarm.definition, isNever);
  if (hours > most)
    return refused({
      why: 'invalid',
      faults: [{ path: 'hours', message: `must be ${longSaid(most)} at most for this alarm` }],
    });
  const standing = doings.suppressedBy(id).find((row) => row.kind === kind);
  if (standing)
    return refused({
      why: 'conflict',
      now: `“${alarm.definition.name}” is ${kind === 'shelved' ? 'shelved' : 'out of service'} already. End that first to change it.`,
    });
  await doings.suppress({
    alarmId: id,
    kind,
    at,
    until: new Date(at.getTime() + hours * HOUR_MS),
    by: who.id,
    reason,
    ...(owner === undefined ? {} : { owner }),
  });
  return ok(null);
}

function longSaid(hours: number): string {
  if (hours % 24 === 0 && hours > 24) return `${hours / 24} days`;
  return hours === 1 ? '1 hour' : `${hours} hours`;
}
