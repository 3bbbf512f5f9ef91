import 'server-only';
import { now } from '../../clock';
import { watchDisks } from '../../machine/watch-disks';

/** Looks every minute how much room the disks have. */
export async function diskWatch(): Promise<void> {
  await watchDisks(now());
}
