import 'server-only';
import type { z } from 'zod';
import { after } from '#core/alarms/known';
import { ok, type Result, refused } from '#core/result';
import { addEvents, holdOpen, keepOpen } from '#data/alarms/occurrences';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { resetRequest } from '#shape/alarms/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { alarmAtHand } from './alarm-at-hand';

export const resetAlarmShape = resetRequest;

/**
 * Resets an alarm that is latched: what it watches is back and somebody has acknowledged it. While it holds nothing is
 * changed, and that somebody tried is kept. It starts no equipment.
 */
export async function resetAlarm(
  who: Who,
  { site: key, occurrence, note }: z.output<typeof resetAlarmShape>,
): Promise<Result<{ site: string; occurrence: string }, Refusal>> {
  const found = await alarmAtHand(who, { site: key, occurrence });
  if (!found.ok) return found;
  const { siteId, told } = found.value;
  const at = now();
  const why = await inTransaction(async (tx) => {
    const row = (await holdOpen(tx, siteId, occurrence)).get(occurrence);
    if (!row) return 'It is over already.';
    const known = after(row, 'reset');
    if (!known && !row.active && !row.suppressed) return 'It has to be acknowledged first.';
    if (!known && row.suppressed && !row.active) return 'It calls nobody just now: end that first.';
    const kind = known ? 'reset' : 'reset-refused';
    const said = note === undefined || note === '' ? {} : { note };
    await addEvents(tx, siteId, [{ occurrenceId: occurrence, kind, at, by: who.id, ...said }]);
    if (known) await keepOpen(tx, siteId, [{ ...row, ...known }]);
    const body = { by: who.id, alarm: told.alarmId, occurrence, ...said };
    await appendRecords(tx, siteId, [{ kind: `alarm-${kind}`, body }], at);
    await news(tx, siteId, 'alarms');
    return known ? null : 'What it watches still holds: a reset changes nothing before it is back to normal.';
  });
  return why === null ? ok({ site: key, occurrence }) : refused({ why: 'conflict', now: why });
}
