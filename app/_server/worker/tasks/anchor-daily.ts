import 'server-only';
import { now } from '../../clock';
import { anchorRecords } from '../../record/anchor-records';

/**
 * Sees each hour that every record has its anchor of the day, in UTC, and that it goes to every place: so a day that
 * began while nothing ran is caught up within the hour.
 */
export async function anchorDaily(): Promise<void> {
  await anchorRecords(now());
}
