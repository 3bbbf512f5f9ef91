import 'server-only';
import { database } from '../client';
import { type TakenBack, takenBack } from '../taken-back';
import type { Transaction } from '../transaction';
import type { StateAct } from './change-state';

/** A state that ended a while ago, with the looks since. */
export interface EndedRun {
  run: string;
  system: { id: string; key: string; name: string };
  state: StateAct['state'];
  endedAt: Date;
  /** Account that ended it. */
  endedBy: string;
  looks: { id: string; at: Date; by: string; note: string | null; taken: TakenBack | null }[];
}

/** States of a site that ended since an instant, in living systems, the latest first. */
export async function endedSince(siteId: string, since: Date): Promise<EndedRun[]> {
  const rows = await database().stateEvent.findMany({
    where: { siteId, kind: 'ended', at: { gte: since }, system: { retiredAt: null } },
    select: { runId: true, state: true, at: true, by: true, system: { select: { id: true, key: true, name: true } } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  });
  const looks = await database().stateEvent.findMany({
    where: { siteId, kind: 'looked', runId: { in: rows.map(({ runId }) => runId) } },
    select: { id: true, runId: true, at: true, by: true, note: true },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  const taken = await takenBack(
    siteId,
    'state-look',
    looks.map(({ id }) => id),
  );
  return rows.map(({ runId: run, state, at: endedAt, by: endedBy, system }) => ({
    ...{ run, system, endedAt, endedBy },
    state: state as EndedRun['state'],
    looks: looks
      .filter(({ runId }) => runId === run)
      .map(({ id, at, by, note }) => ({ id, at, by, note, taken: taken.get(id) ?? null })),
  }));
}

/** A look after a state, by its id. */
export async function findLook(
  tx: Pick<Transaction, 'stateEvent'>,
  siteId: string,
  id: string,
): Promise<{ by: string; run: string; systemId: string } | null> {
  const row = await tx.stateEvent.findUnique({ where: { siteId_id: { siteId, id } } });
  return row?.kind === 'looked' ? { by: row.by, run: row.runId, systemId: row.systemId } : null;
}

/** When a lead last let each of these runs go on, by run. */
export async function lastAuthorised(
  siteId: string,
  runs: readonly string[],
): Promise<Map<string, { at: Date; by: string }>> {
  const rows = await database().stateEvent.findMany({
    where: { siteId, kind: 'authorised', runId: { in: [...runs] } },
    select: { runId: true, at: true, by: true },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  return new Map(rows.map(({ runId, at, by }) => [runId, { at, by }]));
}
