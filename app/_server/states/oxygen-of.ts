import 'server-only';
import { type OxygenWithout, oxygenWithout } from '#core/review/oxygen-without';
import type { Begun } from '#core/states/state-end';
import type { Place } from '../reviews/find-place';

/** Answers kept in memory: the form that is shown and the state that is begun by it ask the same. */
const MOST = 200;
const kept = new Map<string, OxygenWithout | null>();

/** How long animals have oxygen in a state that stops air; null where it stops none. Worked out once for each revision and day. */
export function oxygenOf({ entry, on, stored, system }: Place, state: Begun): OxygenWithout | null {
  const key = [entry.id, entry.revision, entry.measuredAt?.getTime(), on, system.key, state].join(' ');
  const known = kept.get(key);
  if (known !== undefined) return known;
  const seen = stored.reviewed.systems.find((one) => one.key === system.key) ?? system;
  const fresh = oxygenWithout(stored.reviewed, seen, state, on);
  kept.set(key, fresh);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return fresh;
}
