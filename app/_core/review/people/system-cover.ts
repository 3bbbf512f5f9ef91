import type { Column } from '../../plans/credit';
import type { HarmClass } from '../result';
import { CLASSES } from '../outcome';
import type { CaseDemand, SystemDemand } from './demand';
import { type JudgedWeek, judgedWeek } from './judged-week';
import type { Scene } from './scene';

/** A fault case over the hours of a week, by the gravest class of harm it comes to. */
export interface CoveredCase {
  id: string;
  title: string;
  cls: HarmClass;
  week: JudgedWeek;
  /** At every hour at which it does harm there is nothing to spare: whoever comes, as things are, comes too late. */
  isLostAlways: boolean;
}

/** The fault cases of a system in one column: of the gravest class that any of them comes to, the others left out. */
export interface SystemCover {
  system: string;
  cls: HarmClass | null;
  cases: CoveredCase[];
}

/** Judge the fault cases of a system over a week. Animals come before the floor, and the floor before a pump. */
export function systemCover({ system, cases }: SystemDemand, scene: Scene, column: Column): SystemCover {
  const covered = cases.flatMap((one) => coveredCase(one, scene, column) ?? []);
  const cls = CLASSES.find((one) => covered.some((c) => c.cls === one)) ?? null;
  return { system, cls, cases: covered.filter((c) => c.cls === cls) };
}

function coveredCase(demand: CaseDemand, scene: Scene, column: Column): CoveredCase | null {
  for (const cls of CLASSES) {
    const week = judgedWeek(demand, scene, column, cls);
    if (week)
      return {
        ...{ id: demand.id, title: demand.title, cls, week },
        isLostAlways: week.lastS.every((last, h) => last === null || (week.spareS[h] ?? 0) <= 0),
      };
  }
  return null;
}

/** The fault case with the least to spare at an hour; null where no fault that begins then harms anything. */
export interface LeastHour {
  /** s; −Infinity where nobody ever puts it right. */
  spareS: number;
  case: CoveredCase;
}

/**
 * Fault cases that people save at some hour at least: those whose hours the rota decides. Where there are none, all: then the curve
 * shows that no hour is any good.
 */
export function decided({ cases }: SystemCover): CoveredCase[] {
  const some = cases.filter(({ isLostAlways }) => !isLostAlways);
  return some.length > 0 ? some : cases;
}

/** The least time to spare over some fault cases, hour by hour. @param hours how many */
export function leastHours(cases: readonly CoveredCase[], hours: number): (LeastHour | null)[] {
  return Array.from({ length: hours }, (_, h) => {
    let least: LeastHour | null = null;
    for (const one of cases) {
      if ((one.week.lastS[h] ?? null) === null) continue;
      const spareS = one.week.spareS[h] ?? Number.POSITIVE_INFINITY;
      if (least === null || spareS < least.spareS) least = { spareS, case: one };
    }
    return least;
  });
}
