import type { View } from './context';
import { namedHarm } from './named-harm';
import { harmWords } from './words';

/** Why a view cannot be judged at all, in words; null when it can. */
export function reasonNot(view: View): string | null {
  if (view.resolved.missing.length > 0) return `not known: ${view.resolved.missing.join(', ')}`;
  if (view.nominal.restless) return 'a plan switches its equipment on and off without rest: look at its bands';
  const [harm] = view.nominal.record.harms;
  if (!harm) return null;
  const tanks = view.resolved.tanks.map((t) => t.tank);
  return `the plan as written does harm without any fault (${harmWords(namedHarm(tanks, harm))})`;
}
