import 'server-only';
import { hostname } from 'node:os';
import { recordSighting } from '#data/worker-sightings';
import { now } from '../../clock';

/** ms a process that ended is remembered. */
const DAY_MS = 86_400_000;

/** Says that this worker is alive: at its start and every minute. */
export async function heartbeat(): Promise<void> {
  const instant = now();
  await recordSighting(`${hostname()}:${process.pid}`, instant, new Date(instant.getTime() - DAY_MS));
}
