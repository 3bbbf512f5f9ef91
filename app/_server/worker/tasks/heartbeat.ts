import 'server-only';
import { hostname } from 'node:os';
import { recordSighting } from '#data/worker-sightings';
import { now } from '../../clock';
import { signRunners } from '../runners';

/** ms a process that ended is remembered. */
const DAY_MS = 86_400_000;

/** Says that this worker is alive, at its start and every minute, and lets go of the jobs of those that are not. */
export async function heartbeat(): Promise<void> {
  const instant = now();
  await recordSighting(`${hostname()}:${process.pid}`, instant, new Date(instant.getTime() - DAY_MS));
  await signRunners();
}
