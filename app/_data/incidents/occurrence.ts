import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** An occurrence of an alarm that an incident is opened from. */
export interface OccurrenceRow {
  id: string;
  beganAt: Date;
  raisedAt: Date;
  alarm: { name: string };
  system: { key: string; name: string };
}

const SHOWN = {
  id: true,
  beganAt: true,
  raisedAt: true,
  alarm: { select: { name: true } },
  system: { select: { key: true, name: true } },
} as const;

/** The occurrence of an alarm of a site with this id; null when there is none. */
export async function findOccurrence(
  siteId: string,
  id: string,
  asker: Pick<Transaction, 'alarmOccurrence'> = database(),
): Promise<OccurrenceRow | null> {
  return await asker.alarmOccurrence.findUnique({ where: { siteId_id: { siteId, id } }, select: SHOWN });
}
