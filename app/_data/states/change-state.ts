import 'server-only';
import type { StateName } from '#core/facility/system';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** Something that is done with a state of a system. */
export interface StateAct {
  /** Id of the event, minted by whoever asks. */
  id: string;
  run: string;
  systemId: string;
  state: Exclude<StateName, 'normal'>;
  at: Date;
  by: string;
  note: string | null;
  /** Of one that is begun: the oxygen there is to be; of one that is ended: what proved it. Plain values. */
  detail?: object;
}

/** Begins a state, in the place of one of the same name that a device has ended. The system is held by whoever calls. */
export async function beginState(
  tx: Transaction,
  siteId: string,
  { until, endsItself, ...act }: StateAct & { until: Date; endsItself: boolean },
): Promise<void> {
  const { systemId, state, run, at } = act;
  await addEvent(tx, siteId, { ...act, kind: 'begun', until, endsItself });
  const fresh = { runId: run, begunAt: at, until, endsItself };
  const where = { siteId_systemId_state: { siteId, systemId, state } };
  await tx.stateOpen.upsert({ where, create: { siteId, systemId, state, ...fresh }, update: fresh });
}

/** Puts the end of a state off. */
export async function putOffState(tx: Transaction, siteId: string, act: StateAct & { until: Date }): Promise<void> {
  await addEvent(tx, siteId, { ...act, kind: 'put-off' });
  await tx.stateOpen.update({ where: { siteId_runId: { siteId, runId: act.run } }, data: { until: act.until } });
}

/** Adds what is done beside a state: a look at what is watched after it, or leave for another day of it. */
export async function noteState(
  tx: Transaction,
  siteId: string,
  act: StateAct & { kind: 'looked' | 'authorised' },
): Promise<void> {
  await addEvent(tx, siteId, act);
}

/** Ends a state. */
export async function endState(tx: Transaction, siteId: string, act: StateAct): Promise<void> {
  await addEvent(tx, siteId, { ...act, kind: 'ended' });
  await tx.stateOpen.delete({ where: { siteId_runId: { siteId, runId: act.run } } });
}

async function addEvent(
  tx: Transaction,
  siteId: string,
  { run, ...event }: StateAct & { kind: string; until?: Date; endsItself?: boolean },
): Promise<void> {
  await tx.stateEvent.create({ data: { siteId, runId: run, ...event } });
}

/** One event of the states of a system. */
export interface StateEventRow extends Omit<StateAct, 'detail'> {
  detail: unknown;
  kind: string;
  until: Date | null;
  endsItself: boolean;
}

/** An event that was kept already, by its id; asked when it may have been sent twice. */
export async function findEvent(tx: Transaction, siteId: string, id: string): Promise<StateEventRow | null> {
  const row = await tx.stateEvent.findUnique({ where: { siteId_id: { siteId, id } } });
  return row && asEvent(row);
}

/** The event that began a run. @throws when there is none, which a state in force has */
export async function findBegun(tx: Transaction, siteId: string, run: string): Promise<StateEventRow> {
  return asEvent(await tx.stateEvent.findUniqueOrThrow({ where: { siteId_id: { siteId, id: run } } }));
}

/** How a run ended; null when it has not, or never was. */
export async function findEnd(tx: Transaction, siteId: string, run: string): Promise<StateEventRow | null> {
  const row = await tx.stateEvent.findFirst({ where: { siteId, runId: run, kind: 'ended' } });
  return row && asEvent(row);
}

/** What was done with the states of a system, the latest first. @param most how many at most */
export async function stateEvents(siteId: string, systemId: string, most: number): Promise<StateEventRow[]> {
  const rows = await database().stateEvent.findMany({
    where: { siteId, systemId },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: most,
  });
  return rows.map(asEvent);
}

type Row = Omit<StateEventRow, 'state' | 'run'> & { state: string; runId: string; siteId: string };

function asEvent({ siteId: _, runId, state, ...row }: Row): StateEventRow {
  return { ...row, run: runId, state: state as StateAct['state'] };
}
