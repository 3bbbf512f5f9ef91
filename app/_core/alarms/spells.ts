import type { StateSpell } from './condition';

/** States that a system is in at an instant, ms since 1970. */
export function inForceAt(spells: readonly StateSpell[], system: string, atMs: number): ReadonlySet<string> {
  const now = spells.filter((one) => one.system === system && one.fromMs <= atMs && (one.toMs ?? Infinity) > atMs);
  return new Set(now.map(({ state }) => state));
}

/** The states in force at an instant and since when all of them are as they are: the latest turn of any, ms since 1970. */
export function lastTurnBefore(spells: readonly StateSpell[], system: string, atMs: number): number {
  const turns = spells
    .filter((one) => one.system === system)
    .flatMap(({ fromMs, toMs }) => [fromMs, toMs ?? -Infinity]);
  return Math.max(-Infinity, ...turns.filter((turn) => turn <= atMs));
}
