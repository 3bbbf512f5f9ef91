import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';
import type { StateAct } from './change-state';

/** A state that is begun at certain times of the week. */
export interface StateTimedRow {
  id: string;
  siteId: string;
  systemId: string;
  state: StateAct['state'];
  /** Days of the week, as the rota names them. */
  days: string[];
  /** Local time of the day, HH:MM. */
  at: string;
  lastsMin: number;
  by: string;
}

/** Adds one. */
export async function addTimed(tx: Transaction, { siteId, ...row }: StateTimedRow, madeAt: Date): Promise<void> {
  await tx.stateTimed.create({ data: { siteId, ...row, madeAt } });
}

/** Ends one. @returns whether it was there and had not ended */
export async function endTimed(tx: Transaction, siteId: string, id: string, by: string, at: Date): Promise<boolean> {
  const { count } = await tx.stateTimed.updateMany({
    where: { siteId, id, endedAt: null },
    data: { endedAt: at, endedBy: by },
  });
  return count > 0;
}

/** Those that have not ended, of these sites. */
export async function listTimed(siteIds: readonly string[]): Promise<StateTimedRow[]> {
  const rows = await database().stateTimed.findMany({
    where: { siteId: { in: [...siteIds] }, endedAt: null, system: { retiredAt: null } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ id, siteId, systemId, state, days, at, lastsMin, by }) => ({
    ...{ id, siteId, systemId, days, at, lastsMin, by },
    state: state as StateTimedRow['state'],
  }));
}
