import 'server-only';
import type { z } from 'zod';
import { after } from '#core/alarms/known';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { browserOf } from '#data/accounts/sessions';
import { availableS } from '#data/alarms/available';
import { addEvents, holdOpen, keepOpen, type OpenRow } from '#data/alarms/occurrences';
import { findOccurrence, listExplained, type OccurrenceTold } from '#data/alarms/told';
import { lastValueOf } from '#data/alarms/watches';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction, type Transaction } from '#data/transaction';
import { acknowledgeRequest } from '#shape/alarms/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { alarmAtHand } from './alarm-at-hand';
import { clockOf } from './second-clock';

/** What came of acknowledging. */
export interface AcknowledgedAnswer {
  site: string;
  occurrence: string;
  /** Name of the alarm. */
  name: string;
  /**
   * Whether this person was the first, had said so before, or comes after somebody else, which is kept as well. Not
   * acknowledged: it has called anew since this person looked, or it is suppressed and calls nobody.
   */
  kind: 'first' | 'again' | 'second' | 'called-anew' | 'suppressed';
  /** Who was first, and when; null when it is not acknowledged. */
  first: { by: string; at: string } | null;
  /** The alarm was raised again since: this says nothing of that. */
  newer: string | null;
  /** Of those folded under it that were to be acknowledged with it: how many now are, and how many are not. */
  folded: { acknowledged: number; left: number } | null;
}

export const acknowledgeAlarmShape = acknowledgeRequest;
type Request = z.output<typeof acknowledgeAlarmShape>;

/**
 * Says that somebody saw an alarm. It is of the one time it was raised that they were shown: another one, raised since, stays
 * as it is. Of two who press at once both are kept, and both are told who was first. Those folded under a first cause may be
 * acknowledged with it, each by an event of its own: all in one transaction.
 */
export async function acknowledgeAlarm(who: Who, request: Request): Promise<Result<AcknowledgedAnswer, Refusal>> {
  const found = await alarmAtHand(who, request);
  if (!found.ok) return found;
  const { siteId, told } = found.value;
  const from = who.session === undefined ? null : await browserOf(who.session);
  const under = await foldedUnder(siteId, request);
  const { kind, folded } = await inTransaction(async (tx) => {
    const at = now();
    const own = await keep(tx, { told, who, request, from }, at);
    return { kind: own, folded: request.folded ? await keepFolded(tx, under, { who, request, from }, at) : null };
  });
  const known = await findOccurrence(siteId, request.occurrence);
  const first = known?.acknowledged ?? null;
  const names = await accountNames(first ? [first.by] : []);
  return ok({
    site: request.site,
    occurrence: request.occurrence,
    name: told.definition.name,
    kind,
    first: first && { by: names.get(first.by) ?? first.by, at: first.at.toISOString() },
    newer: known?.newer ?? null,
    folded,
  });
}

/** Those of the times asked for that stand under this alarm, in the order in which everybody takes them. */
async function foldedUnder(siteId: string, { occurrence, folded = [] }: Request): Promise<OccurrenceTold[]> {
  if (folded.length === 0) return [];
  const asked = new Set(folded.map((one) => one.occurrence));
  const under = await listExplained(siteId, occurrence);
  return under.filter(({ id }) => asked.has(id)).sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** Acknowledges what is folded; what somebody acknowledged before, what calls nobody and what has called anew stays as it is. */
async function keepFolded(
  tx: Transaction,
  under: readonly OccurrenceTold[],
  { who, request, from }: Omit<Pressed, 'told'>,
  at: Date,
): Promise<{ acknowledged: number; left: number }> {
  const { folded = [], ...own } = request;
  let acknowledged = 0;
  for (const told of under) {
    const again = folded.find(({ occurrence }) => occurrence === told.id)?.again;
    const kind = await keep(tx, { told, who, from, request: { ...own, occurrence: told.id, again } }, at);
    if (kind === 'first' || kind === 'again' || kind === 'second') acknowledged += 1;
  }
  return { acknowledged, left: folded.length - acknowledged };
}

interface Pressed {
  told: OccurrenceTold;
  who: Who;
  request: Request;
  /** What the browser calls itself. */
  from: string | null;
}

async function keep(tx: Transaction, pressed: Pressed, at: Date): Promise<AcknowledgedAnswer['kind']> {
  const { told, request } = pressed;
  // Whoever presses at the same moment waits here, and then finds it acknowledged.
  const row = (await holdOpen(tx, told.site.id, told.id)).get(told.id);
  if (row?.suppressed) return 'suppressed';
  const known = row && after(row, 'acknowledged');
  if (!(row && known)) return await keepLater(tx, pressed, at);
  // What is acknowledged is what was there when the page was drawn, and nothing that came since.
  if (request.again !== undefined && request.again < row.again) return 'called-anew';
  await add(tx, pressed, 'acknowledged', at);
  const clock = known.active ? await startClock(tx, pressed, row, at) : { turnBy: null, valueThen: null };
  await keepOpen(tx, told.site.id, [{ ...row, ...known, nextStepAt: null, ...clock }]);
  return 'first';
}

/** Somebody has acknowledged it already, or it was over before anybody did. */
async function keepLater(tx: Transaction, pressed: Pressed, at: Date): Promise<AcknowledgedAnswer['kind']> {
  const { told, who, request } = pressed;
  const said = await tx.alarmEvent.findMany({
    where: { siteId: told.site.id, occurrenceId: told.id, kind: { in: ['acknowledged', 'acknowledged-too'] } },
    select: { by: true },
  });
  const isOwn = said.some(({ by }) => by === who.id);
  if (said.length === 0) return 'suppressed';
  if (isOwn && request.note === undefined) return 'again';
  await add(tx, pressed, isOwn ? 'noted' : 'acknowledged-too', at);
  return isOwn ? 'again' : 'second';
}

async function startClock(tx: Transaction, { told }: Pressed, row: OpenRow, at: Date) {
  const siteId = told.site.id;
  const left = await availableS(tx, siteId, [row.alarmId]);
  return clockOf(told.definition, await lastValueOf(tx, siteId, row.alarmId), at, left.get(row.alarmId) ?? null);
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
