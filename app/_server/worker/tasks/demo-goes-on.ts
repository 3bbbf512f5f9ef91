import 'server-only';
import { now } from '../../clock';
import { goOn } from '../../demo/go-on';

/** Lets the readings of the demonstration's sites go on each minute. */
export async function demoGoesOn(): Promise<void> {
  await goOn(now());
}
