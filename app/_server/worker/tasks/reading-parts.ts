import 'server-only';
import { keepParts } from '../../readings/keep-parts';
import { retireReadings } from '../../readings/retire-readings';

/** Makes the parts of the readings ahead, and lets those go that nobody keeps: at the start of a worker and every day. */
export async function readingParts(): Promise<void> {
  await keepParts();
  await retireReadings();
}
