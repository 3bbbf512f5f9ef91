import 'server-only';
import type { Schedule } from '#core/rounds/schedule';
import { scheduleOfDays } from '#core/states/timed';
import { addDays } from '#core/time/add-days';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';
import type { StateAct } from './change-state';

/** A state that is begun by a schedule. */
export interface StateTimedRow {
  id: string;
  siteId: string;
  systemId: string;
  state: StateAct['state'];
  schedule: Schedule;
  lastsMin: number;
  by: string;
}

/** Adds one. */
export async function addTimed(tx: Transaction, { schedule, ...row }: StateTimedRow, madeAt: Date): Promise<void> {
  const at = schedule.times[0]?.at ?? '00:00';
  await tx.stateTimed.create({
    data: { ...row, schedule: schedule as unknown as Prisma.InputJsonObject, days: [], at, madeAt },
  });
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
  return rows.map(({ id, siteId, systemId, state, schedule, days, at, lastsMin, madeAt, by }) => ({
    ...{ id, siteId, systemId, lastsMin, by },
    state: state as StateTimedRow['state'],
    // A day more: the day at the site may be another than in UTC.
    schedule: (schedule as Schedule | null) ?? scheduleOfDays(days, at, addDays(isoDay(madeAt), -1)),
  }));
}

function isoDay(at: Date): string {
  return at.toISOString().slice(0, 10);
}
