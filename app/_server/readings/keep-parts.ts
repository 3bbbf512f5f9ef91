import 'server-only';
import { ensureParts, forgetParts, hasPart, monthsFrom } from '#data/readings/parts';
import { now } from '../clock';

/** Months whose parts are made ahead of the present one. */
const AHEAD = 3;

/** Makes the parts of the readings for this month and those ahead, where they are not there yet. */
export async function keepParts(): Promise<void> {
  // Asked anew each day: somebody may have taken one away.
  forgetParts();
  await ensureParts(monthsFrom(now(), 1 + AHEAD));
}

/**
 * Whether the next month's readings have a part to go to.
 *
 * @throws   when the database does not answer
 */
export async function isNextPartThere(): Promise<boolean> {
  const next = monthsFrom(now(), 2)[1];
  return next !== undefined && (await hasPart(next));
}
