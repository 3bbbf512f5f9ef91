import 'server-only';
import { type Candidate, firstCauses, isBackupFailing, leavesCalling } from '#core/alarms/first-out/first-cause';
import type { Priority } from '#core/alarms/design/priority';
import type { Placed } from '#core/alarms/first-out/explains';
import type { OpenRow } from '#data/alarms/occurrences';
import type { DefinedAlarm, DefinedSite } from './defined-alarms';
import type { Fresh } from './doings';

/** What an alarm is folded under, and whether it leaves the calling to that. */
export interface FoldedUnder {
  id: string;
  leavesCalling: boolean;
}

/**
 * The first causes of what is raised in a turn.
 *
 * @param rows       all that still wants something, what is raised now as well
 * @param fresh      what calls in this turn
 * @param proposed   priorities that the reviews propose, by alarm: they count where nobody chose one
 */
export function foldedUnder(
  site: DefinedSite,
  rows: readonly OpenRow[],
  fresh: readonly Fresh[],
  proposed: ReadonlyMap<string, Priority>,
): Map<string, FoldedUnder> {
  const raisedNow = fresh.filter(({ occurrence }) => occurrence !== null);
  if (raisedNow.length === 0) return new Map();
  const began = new Map(raisedNow.map(({ id, beganMs }) => [id, beganMs]));
  const candidates = rows.filter(({ active, suppressed }) => active && !suppressed).flatMap(candidate);
  const found = firstCauses(
    site.facility,
    candidates.filter(({ id }) => began.has(id)),
    candidates.filter(({ id }) => !began.has(id)),
  );
  return new Map(
    [...found].flatMap(([id, cause]) => {
      const [of, own] = [candidates.find((one) => one.id === cause), candidates.find((one) => one.id === id)];
      return of && own ? [[id, { id: cause, leavesCalling: leavesCalling(of.placed, own.placed) }] as const] : [];
    }),
  );

  function candidate(row: OpenRow): Candidate[] {
    const alarm = site.alarms.get(row.alarmId);
    if (!alarm) return [];
    const raisedMs = row.raisedAt.getTime();
    const { occurrenceId: id, causeId } = row;
    return [
      { id, placed: placedOf(alarm, proposed.get(row.alarmId)), raisedMs, beganMs: began.get(id) ?? raisedMs, causeId },
    ];
  }
}

/** What somebody has acknowledged, and what is raised in this turn and says that its backup in charge fails. */
export function backupsFailing(
  site: DefinedSite,
  rows: readonly OpenRow[],
  fresh: readonly Fresh[],
): { row: OpenRow; by: Fresh }[] {
  return rows
    .filter(({ active, acknowledged }) => active && acknowledged)
    .flatMap((row) => {
      const alarm = site.alarms.get(row.alarmId);
      const by = fresh.find((one) => {
        const raised = one.occurrence === null ? undefined : site.alarms.get(one.alarm?.id ?? '');
        return alarm && raised && isBackupFailing(site.facility, placedOf(alarm), placedOf(raised));
      });
      return by ? [{ row, by }] : [];
    });
}

function placedOf({ system, definition }: DefinedAlarm, proposed?: Priority): Placed {
  if (definition.priority || !proposed) return { system, alarm: definition };
  return { system, alarm: { ...definition, priority: { level: proposed, why: 'proposed by the review' } } };
}
