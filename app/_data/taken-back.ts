import 'server-only';
import type { TakenWhat } from '#core/rounds/taken-back';
import { database } from './client';
import type { Transaction } from './transaction';

/** Who took something back, when, and why. */
export interface TakenBack {
  at: Date;
  by: string;
  reason: string;
}

type Asker = Pick<Transaction, 'takenBack'>;

/** Which of some things of a kind were taken back, by the id of the thing. One question; none where there is no thing. */
export async function takenBack(
  siteId: string,
  what: TakenWhat,
  about: readonly string[],
  asker: Asker = database(),
): Promise<Map<string, TakenBack>> {
  if (about.length === 0) return new Map();
  const rows = await asker.takenBack.findMany({ where: { siteId, what, about: { in: [...about] } } });
  return new Map(rows.map(({ about: id, at, by, reason }) => [id, { at, by, reason }]));
}

/** Keeps that something was taken back. @throws when it was already */
export async function addTakenBack(
  tx: Asker,
  siteId: string,
  thing: { what: TakenWhat; about: string } & TakenBack,
): Promise<void> {
  await tx.takenBack.create({ data: { siteId, ...thing } });
}
