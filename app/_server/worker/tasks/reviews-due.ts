import 'server-only';
import { now } from '../../clock';
import { wakeDue } from '../../reviews/wake-due';

/** Looks every minute whether the reviews of a site have to be looked at again. */
export async function reviewsDue(): Promise<void> {
  await wakeDue(now());
}
