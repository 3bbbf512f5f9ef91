import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { addEvents } from '#data/alarms/occurrences';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { noteRequest } from '#shape/alarms/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { alarmAtHand } from './alarm-at-hand';

export const noteAlarmShape = noteRequest;

/** Adds a note to what is known of an alarm, whether it is acknowledged or not. */
export async function noteAlarm(
  who: Who,
  { site: key, occurrence, note }: z.output<typeof noteAlarmShape>,
): Promise<Result<{ site: string; occurrence: string }, Refusal>> {
  const found = await alarmAtHand(who, { site: key, occurrence });
  if (!found.ok) return found;
  const { siteId, told } = found.value;
  const at = now();
  await inTransaction(async (tx) => {
    await addEvents(tx, siteId, [{ occurrenceId: occurrence, kind: 'noted', at, by: who.id, note }]);
    const body = { by: who.id, alarm: told.alarmId, occurrence, note };
    await appendRecords(tx, siteId, [{ kind: 'alarm-noted', body }], at);
    await news(tx, siteId, 'alarms');
  });
  return ok({ site: key, occurrence });
}
