import 'server-only';
import { keepParts } from '../../readings/keep-parts';

/** Makes the parts of the readings ahead: at the start of a worker and every day. */
export async function readingParts(): Promise<void> {
  await keepParts();
}
