import { stateMinOf } from '../equipment/defaults';
import type { Context } from './context';
import type { FaultCase } from './result';
import type { Subject } from './trial';

/** The failure mode that looks at a state with nothing wrong in it. */
export const STATE_ALONE = 'state-alone';

/** How long after the onset a state that ends by itself can still matter: so many times its own length, and at least this, s. */
const LENGTHS = 8;
const AT_LEAST_S = 7200;

/**
 * Whether a fault needs to be tried in an operating state as well. A state that a device ends, and that is long over before
 * the same fault does any harm in normal running, comes to nothing new and is left out. One that only a person ends, or that
 * ends close to a harm, is always tried; so is whatever has no counterpart in normal running. Where a state does harm by
 * itself, that is its one case: no fault is judged on top of it until the plan is mended.
 */
export function reaches(context: Context, subject: Subject): boolean {
  const { fault, thing, state } = subject;
  if (state === 'normal' || fault.id === STATE_ALONE) return true;
  const alone = context.judged.get(`${STATE_ALONE}:${context.system.key}:${state}`);
  if (alone && alone.claimed.outcomes.length > 0) return false;
  const described = context.system.states.find((s) => s.name === state);
  const normal = context.judged.get(`${fault.id}:${thing.key}:normal`);
  if (!described || described.endsBy === 'person' || !normal) return true;
  const lengthS = 60 * (described.lastsMin?.value ?? stateMinOf(state).value);
  return soonestHarm(normal) <= Math.max(AT_LEAST_S, LENGTHS * lengthS);
}

function soonestHarm(c: FaultCase): number {
  const times = [c.claimed, c.tested].flatMap((j) => j.outcomes.flatMap((o) => o.harmS)).filter((s) => s !== null);
  return Math.min(Number.POSITIVE_INFINITY, ...times);
}
