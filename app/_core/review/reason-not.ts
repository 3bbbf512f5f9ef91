import type { View } from './context';

/** Why a view cannot be judged at all, in words; null when it can. */
export function reasonNot(view: View): string | null {
  if (view.resolved.missing.length > 0) return `not known: ${view.resolved.missing.join(', ')}`;
  const [harm] = view.nominal.record.harms;
  if (harm)
    return `the plan as written leaves the limits without any fault (${harm.what} in ${harm.tank || 'the room'})`;
  return null;
}
