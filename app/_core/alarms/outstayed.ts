import type { Outstayed, StateSpell } from './condition';
import type { Step, Watch } from './is-true';

/**
 * Holds an alarm for a state that lasts too long to the states of its system. It goes by what people began, put off and
 * ended, and by the clock on the wall; that a state ends is what ends it.
 *
 * @param nowMs   ms since 1970
 */
export function passOutstayed(condition: Outstayed, before: Watch, spells: readonly StateSpell[], nowMs: number): Step {
  const spell = spells.find(
    ({ system, state, fromMs, toMs }) =>
      system === condition.system && state === condition.state && fromMs <= nowMs && (toMs ?? Infinity) > nowMs,
  );
  const isActive = before.phase === 'active';
  if (!spell) return isActive ? back(before, endOf(condition, spells, nowMs)) : calm(before);
  const { afterS, delayS } = condition;
  const overMs = (afterS === null ? spell.untilMs : spell.fromMs + afterS * 1000) + delayS * 1000;
  if (nowMs < overMs) {
    // Put off, it lasts no longer than it is meant to.
    if (isActive) return back({ ...before, dueMs: overMs }, nowMs, 'pending');
    if (before.dueMs === overMs) return { watch: before, turn: null };
    return { watch: { ...before, phase: 'pending', sinceMs: spell.fromMs, dueMs: overMs }, turn: null };
  }
  if (isActive) return { watch: before, turn: null };
  return {
    watch: { ...before, phase: 'active', sinceMs: nowMs, dueMs: null },
    turn: { kind: 'raised', atMs: overMs - delayS * 1000, value: null },
  };
}

/** When it ended; the present where that is not known any more. */
function endOf({ system, state }: Outstayed, spells: readonly StateSpell[], nowMs: number): number {
  const ends = spells.flatMap((one) =>
    one.system === system && one.state === state && one.toMs !== null && one.toMs <= nowMs ? [one.toMs] : [],
  );
  return ends.length === 0 ? nowMs : Math.max(...ends);
}

function calm(before: Watch): Step {
  if (before.phase === 'normal') return { watch: before, turn: null };
  return { watch: { ...before, phase: 'normal', dueMs: null }, turn: null };
}

function back(before: Watch, atMs: number, phase: Watch['phase'] = 'normal'): Step {
  const dueMs = phase === 'pending' ? before.dueMs : null;
  return { watch: { ...before, phase, sinceMs: atMs, dueMs }, turn: { kind: 'returned', atMs, value: null } };
}
