import 'server-only';
import type { z } from 'zod';
import { after } from '#core/alarms/known';
import { ok, type Result, refused } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { browserOf } from '#data/accounts/sessions';
import { addEvents, holdOpen, keepOpen } from '#data/alarms/occurrences';
import { findOccurrence, type OccurrenceTold } from '#data/alarms/told';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction, type Transaction } from '#data/transaction';
import { acknowledgeRequest } from '#shape/alarms/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** What came of acknowledging. */
export interface AcknowledgedAnswer {
  site: string;
  occurrence: string;
  /** Name of the alarm. */
  name: string;
  /** Whether this person was the first, had said so before, or comes after somebody else, which is kept as well. */
  kind: 'first' | 'again' | 'second';
  /** Who was first, and when. */
  first: { by: string; at: string };
  /** The alarm was raised again since: this says nothing of that. */
  newer: string | null;
}

export const acknowledgeAlarmShape = acknowledgeRequest;
type Request = z.output<typeof acknowledgeAlarmShape>;

/**
 * Says that somebody saw an alarm. It is of the one time it was raised that they were shown: another one, raised since, stays
 * as it is. Of two who press at once both are kept, and both are told who was first.
 */
export async function acknowledgeAlarm(who: Who, request: Request): Promise<Result<AcknowledgedAnswer, Refusal>> {
  const site = await siteFor(who, 'acknowledge', request.site);
  if (!site.ok) return site;
  const siteId = site.value.id;
  const told = await findOccurrence(siteId, request.occurrence);
  if (!told) return refused({ why: 'not-found', what: 'alarm' });
  const from = who.session === undefined ? null : await browserOf(who.session);
  const kind = await inTransaction((tx) => keep(tx, { told, who, request, from }, now()));
  const known = await findOccurrence(siteId, request.occurrence);
  if (!known?.acknowledged) throw new Error(`Alarm ${request.occurrence} was acknowledged and is not`);
  const { by, at } = known.acknowledged;
  const names = await accountNames([by]);
  return ok({
    site: request.site,
    occurrence: request.occurrence,
    name: told.definition.name,
    kind,
    first: { by: names.get(by) ?? by, at: at.toISOString() },
    newer: known.newer,
  });
}

interface Pressed {
  told: OccurrenceTold;
  who: Who;
  request: Request;
  /** What the browser calls itself. */
  from: string | null;
}

async function keep(tx: Transaction, pressed: Pressed, at: Date): Promise<AcknowledgedAnswer['kind']> {
  const { told, who, request } = pressed;
  // Whoever presses at the same moment waits here, and then finds it acknowledged.
  const row = (await holdOpen(tx, told.site.id, told.id)).get(told.id);
  const known = row && after(row, 'acknowledged');
  if (row && known) {
    await add(tx, pressed, 'acknowledged', at);
    await keepOpen(tx, told.site.id, [{ ...row, ...known, nextStepAt: null }]);
    return 'first';
  }
  const isOwn = await tx.alarmEvent.count({
    where: {
      siteId: told.site.id,
      occurrenceId: told.id,
      by: who.id,
      kind: { in: ['acknowledged', 'acknowledged-too'] },
    },
  });
  if (isOwn > 0 && request.note === undefined) return 'again';
  await add(tx, pressed, isOwn > 0 ? 'noted' : 'acknowledged-too', at);
  return isOwn > 0 ? 'again' : 'second';
}

async function add(
  tx: Transaction,
  { told, who, request: { note, page }, from }: Pressed,
  kind: 'acknowledged' | 'acknowledged-too' | 'noted',
  at: Date,
): Promise<void> {
  const { id: occurrenceId, alarmId, site } = told;
  const said = note === undefined || note === '' ? {} : { note };
  const event = { occurrenceId, kind, at, by: who.id, ...said, ...(from === null ? {} : { from }), detail: { page } };
  await addEvents(tx, site.id, [event]);
  const body = { by: who.id, alarm: alarmId, occurrence: occurrenceId, ...said };
  await appendRecords(tx, site.id, [{ kind: `alarm-${kind}`, body }], at);
  await news(tx, site.id, 'alarms');
}
