import type { StateSpell } from './condition';

/** States that a system is in at an instant, ms since 1970. */
export function inForceAt(spells: readonly StateSpell[], system: string, atMs: number): ReadonlySet<string> {
  const inForce = new Set<string>();
  for (const one of spells)
    if (one.fromMs <= atMs && (one.toMs === null || one.toMs > atMs) && one.system === system) inForce.add(one.state);
  return inForce;
}

/** When a state of a system last began or ended before an instant, ms since 1970; −Infinity: not that is known. */
export function lastTurnBefore(spells: readonly StateSpell[], system: string, atMs: number): number {
  let last = -Infinity;
  for (const { system: of, fromMs, toMs } of spells) {
    if (of !== system) continue;
    if (fromMs <= atMs && fromMs > last) last = fromMs;
    if (toMs !== null && toMs <= atMs && toMs > last) last = toMs;
  }
  return last;
}
