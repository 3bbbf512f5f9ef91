import 'server-only';
import { z } from 'zod';
import { ALARM_STATES } from '#core/alarms/life/machine';
import { ok, type Result } from '#core/result';
import { listSystems } from '#data/alarms/by-hand';
import { newId } from '#data/new-id';
import { listOpenAlarms, listOverAlarms } from '#data/alarms/told';
import { lastJudged } from '#data/alarms/turn';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { type AlarmLine, alarmLines } from './alarm-lines';
import { type SuppressedLine, suppressedLines } from './suppressed-lines';

/** ms of the past that is listed. */
const PAST_MS = 7 * 86_400_000;
/** ms after which it has to be said that nobody judges: it is done every half minute at least. */
const LATE_MS = 120_000;

/** The alarms of a site. */
export interface AlarmsPage {
  site: { key: string; name: string; zone: string };
  /** What wants something: first what nobody acknowledged, then what is still active, then what returned. */
  open: AlarmLine[];
  /** What was raised within the past seven days and wants nothing any more, the newest first. */
  past: AlarmLine[];
  /** Alarms that call nobody now. */
  suppressed: SuppressedLine[];
  mayAcknowledge: boolean;
  /** What a call for help may be of, and its id; null for those who may not call. */
  help: { systems: { key: string; name: string }[]; nextCall: string } | null;
  /** When alarms were last judged, where that is too long ago; ISO, or `never`. Null: they are being judged. */
  notJudgedSince: string | null;
}

export const listAlarmsShape = z.object({ site: z.string() });

/** Alarms of a site that want something, and those of the past week. */
export async function listAlarms(
  who: Who,
  { site: key }: z.output<typeof listAlarmsShape>,
): Promise<Result<AlarmsPage, Refusal>> {
  const found = await siteFor(who, 'see', key);
  if (!found.ok) return found;
  const { id: siteId, name, zone } = found.value;
  const at = now();
  const open = await alarmLines(siteId, await listOpenAlarms(siteId), at);
  const past = await alarmLines(siteId, await listOverAlarms(siteId, new Date(at.getTime() - PAST_MS)), at);
  const judged = await lastJudged(siteId);
  const isLate = judged === null || at.getTime() - judged.getTime() > LATE_MS;
  return ok({
    site: { key, name, zone },
    open: open.sort((a, b) => ALARM_STATES.indexOf(a.state) - ALARM_STATES.indexOf(b.state)),
    past,
    suppressed: await suppressedLines(siteId),
    mayAcknowledge: may(who, 'acknowledge', key),
    help: may(who, 'call-for-help', key) ? { systems: await listSystems(siteId), nextCall: newId() } : null,
    notJudgedSince: isLate ? (judged?.toISOString() ?? 'never') : null,
  });
}
