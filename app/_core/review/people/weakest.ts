import type { CoveredCase, LeastHour } from './system-cover';
import type { Way } from './way';
import type { Harm } from '../result';

/** Hours on end in which one fault case of a system has the least to spare, and how it stands at the worst of them. */
export interface WeakStretch {
  system: string;
  /** Index of its first hour, of its worst, and how many there are; it may run past the end of a usual week. */
  from: number;
  worst: number;
  hours: number;
  /** At its worst hour, s; −Infinity where nobody ever puts it right. */
  spareS: number;
  case: Pick<CoveredCase, 'id' | 'title'>;
  /** Last chance, s after the onset, and the harm itself. */
  lastS: number;
  harm: Harm;
  /** Null where nobody ever puts it right. */
  way: Way | null;
}

/**
 * The weakest stretches of a system, in the order of the hours: each as long as the same fault case, met by the same person in the
 * same way, has the least to spare.
 *
 * @param isRound   the last hour is followed by the first, as in a usual week
 */
export function weakStretches(system: string, least: readonly (LeastHour | null)[], isRound: boolean): WeakStretch[] {
  const count = least.length;
  const name = (h: number) => nameOf(least[h] ?? null, h);
  const isJoined = (h: number) => (h > 0 || isRound) && name(h) === name((h + count - 1) % count);
  const begins = least.flatMap((_, h) => (isJoined(h) ? [] : [h]));
  const starts = begins.length > 0 ? begins : [0];
  return starts.flatMap((from, i): WeakStretch[] => {
    const next = starts[i + 1] ?? (isRound ? count + (starts[0] ?? 0) : count);
    const hours = Array.from({ length: next - from }, (_, k) => (from + k) % count);
    const worst = hours.reduce((a, b) => (spareAt(least, b) < spareAt(least, a) ? b : a), from);
    const one = least[worst];
    const harm = one?.case.week.harm[worst];
    if (!(one && harm)) return [];
    const { id, title, week } = one.case;
    return [
      {
        ...{ system, from, worst, hours: hours.length, spareS: one.spareS, case: { id, title }, harm },
        ...{ lastS: week.lastS[worst] ?? 0, way: week.met[worst]?.way ?? null },
      },
    ];
  });
}

function spareAt(least: readonly (LeastHour | null)[], h: number): number {
  return least[h]?.spareS ?? Number.POSITIVE_INFINITY;
}

/** What has to be the same for two hours to be told as one stretch. */
function nameOf(least: LeastHour | null, h: number): string {
  if (!least) return '';
  const way = least.case.week.met[h]?.way;
  const who = way?.come ? `${way.come.kind} ${way.come.person}` : (way?.walkers.join() ?? '');
  return `${least.case.id} ${way?.by ?? ''} ${way?.key ?? ''} ${who} ${least.spareS <= 0}`;
}
