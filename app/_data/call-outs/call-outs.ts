import 'server-only';
import type { CallOutEvent } from '#core/call-outs/call-out';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** Somebody who went in alone. */
export interface CallOutRow {
  siteId: string;
  id: string;
  accountId: string;
  /** Who may say besides them that they are back. */
  namedId: string | null;
  /** The alarm they go for. */
  occurrenceId: string | null;
  /** Where they are, in their words. */
  place: string;
  begunAt: Date;
  untilAt: Date;
  events: CallOutEventRow[];
}

/** What became of it, with who did it. */
export interface CallOutEventRow {
  kind: CallOutEvent['kind'];
  at: Date;
  by: string | null;
  step: number;
  untilAt: Date | null;
  note: string | null;
}

/** What is added to a call-out. `again` and `step` keep the same from being added twice. */
export interface NewCallOutEvent {
  kind: CallOutEvent['kind'];
  again: number;
  step: number;
  at: Date;
  by?: string;
  untilAt?: Date;
  note?: string;
}

const WITH_EVENTS = { events: { orderBy: [{ at: 'asc' as const }, { id: 'asc' as const }] } };

/** Adds somebody who goes in alone. @returns its id */
export async function addCallOut(
  tx: Transaction,
  siteId: string,
  callOut: Omit<CallOutRow, 'siteId' | 'id' | 'events'>,
): Promise<string> {
  const id = newId();
  await tx.callOut.create({ data: { siteId, id, ...callOut } });
  return id;
}

/** Adds what became of it. @returns whether it was not added before, by a second press or another worker */
export async function addCallOutEvent(
  tx: Transaction,
  { siteId, id: callOutId }: Pick<CallOutRow, 'siteId' | 'id'>,
  event: NewCallOutEvent,
): Promise<boolean> {
  const data = [{ siteId, id: newId(), callOutId, ...event }];
  return (await tx.callOutEvent.createMany({ data, skipDuplicates: true })).count > 0;
}

/** A call-out by its id; null when there is none. */
export async function findCallOut(siteId: string, id: string): Promise<CallOutRow | null> {
  const found = await database().callOut.findUnique({ where: { siteId_id: { siteId, id } }, include: WITH_EVENTS });
  return found && told(found);
}

/** Who is out alone, of a site or of every one, whoever went first first. */
export async function openCallOuts(siteId?: string): Promise<CallOutRow[]> {
  const found = await database().callOut.findMany({
    where: { ...(siteId === undefined ? {} : { siteId }), events: { none: { kind: 'back' } } },
    include: WITH_EVENTS,
    orderBy: [{ begunAt: 'asc' }, { id: 'asc' }],
  });
  return found.map(told);
}

/** Those of a site that are over, newest first. */
export async function pastCallOuts(siteId: string, most: number): Promise<CallOutRow[]> {
  const found = await database().callOut.findMany({
    where: { siteId, events: { some: { kind: 'back' } } },
    include: WITH_EVENTS,
    orderBy: [{ begunAt: 'desc' }, { id: 'desc' }],
    take: most,
  });
  return found.map(told);
}

/** Accounts that were called to look for each of some people. */
export async function calledFor(siteId: string, callOutIds: readonly string[]): Promise<Map<string, Set<string>>> {
  const rows = await database().alarmCall.findMany({
    where: { siteId, callOutId: { in: [...callOutIds] } },
    select: { callOutId: true, accountId: true },
  });
  const called = new Map<string, Set<string>>();
  for (const { callOutId, accountId } of rows) {
    if (callOutId === null) continue;
    called.set(callOutId, (called.get(callOutId) ?? new Set()).add(accountId));
  }
  return called;
}

/** What became of a call-out, as the core reckons with it. */
export function eventsOf({ events }: Pick<CallOutRow, 'events'>): CallOutEvent[] {
  return events.map(({ kind, at, step, untilAt }): CallOutEvent => {
    const atMs = at.getTime();
    if (kind === 'extended') return { kind, atMs, untilMs: (untilAt ?? at).getTime() };
    return kind === 'overdue' ? { kind, atMs, step } : { kind, atMs };
  });
}

function told(row: Omit<CallOutRow, 'events'> & { events: (Omit<CallOutEventRow, 'kind'> & { kind: string })[] }) {
  const events = row.events.map((event) => ({ ...event, kind: event.kind as CallOutEvent['kind'] }));
  return { ...row, events };
}
