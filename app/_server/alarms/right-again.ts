import 'server-only';
import type { z } from 'zod';
import { after, type Known } from '#core/alarms/known';
import { ok, type Result, refused } from '#core/result';
import { addEvents, holdOpen, keepOpen, type NewEvent } from '#data/alarms/occurrences';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { rightAgainRequest } from '#shape/alarms/by-hand';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { alarmAtHand } from './alarm-at-hand';

export const rightAgainShape = rightAgainRequest;

/**
 * Says that what somebody called for by hand is right again, and what was done. No reading tells that, so a person does; whoever
 * says it has seen the alarm as well. One that readings raised is ended by readings alone.
 */
export async function rightAgain(
  who: Who,
  { site: key, occurrence, note }: z.output<typeof rightAgainShape>,
): Promise<Result<{ site: string; occurrence: string }, Refusal>> {
  const found = await alarmAtHand(who, { site: key, occurrence });
  if (!found.ok) return found;
  const { siteId, told } = found.value;
  if (told.definition.on.kind !== 'by-hand')
    return refused({
      why: 'conflict',
      now: 'Readings raised this alarm, and they alone tell that it is back to normal.',
    });
  const at = now();
  const isDone = await inTransaction(async (tx) => {
    const row = (await holdOpen(tx, siteId, occurrence)).get(occurrence);
    if (!row?.active) return false;
    const seen = after(row, 'acknowledged');
    const known: Known | null = after(seen ?? row, 'returned');
    if (!known) return false;
    const said = { occurrenceId: occurrence, at, by: who.id };
    const events: NewEvent[] = [{ ...said, kind: 'returned', note, detail: { at: at.toISOString() } }];
    const body = { by: who.id, alarm: told.alarmId, occurrence };
    const records = [{ kind: 'alarm-returned', body: { ...body, note } }];
    if (seen) {
      events.unshift({ ...said, kind: 'acknowledged', detail: { page: 'alarm' } });
      records.unshift({ kind: 'alarm-acknowledged', body: { ...body, note } });
    }
    await addEvents(tx, siteId, events);
    await keepOpen(tx, siteId, [{ ...row, ...known, nextStepAt: null, turnBy: null }]);
    await appendRecords(tx, siteId, records, at);
    await news(tx, siteId, 'alarms');
    return true;
  });
  return isDone ? ok({ site: key, occurrence }) : refused({ why: 'conflict', now: 'It is over already.' });
}
