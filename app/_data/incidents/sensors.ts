import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A sensor as an incident speaks of it. */
export interface SensorRow {
  id: string;
  key: string;
  name: string;
  quantity: string;
  systemId: string;
}

const SHOWN = { id: true, key: true, name: true, quantity: true, systemId: true } as const;

/** The sensors of a site with these ids, retired ones too. */
export async function sensorsNamed(
  tx: Pick<Transaction, 'sensor'>,
  siteId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, SensorRow>> {
  const rows = await tx.sensor.findMany({ where: { siteId, id: { in: [...ids] } }, select: SHOWN });
  return new Map(rows.map((row) => [row.id, row]));
}

/** The living sensors of a system, or of the whole site, in the order of the file. */
export async function sensorsOf(siteId: string, systemId: string | null): Promise<SensorRow[]> {
  const where = { siteId, retiredAt: null, ...(systemId === null ? {} : { systemId }) };
  return await database().sensor.findMany({ where, select: SHOWN, orderBy: [{ systemId: 'asc' }, { ordinal: 'asc' }] });
}
