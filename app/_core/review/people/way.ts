import { type Come, comesAfter } from '../../rota/answering';
import { WATCHDOG } from '../../simulate/build-alarms';
import type { Notice } from '../result';
import type { CourseDemand } from './demand';
import { firstLook, meetingsOf } from './looks';
import type { Scene } from './scene';

/** How a fault is noticed and put right, part by part. Times are seconds. */
export interface Way {
  by: Exclude<Notice['by'], 'nobody'>;
  /** Key of the alarm or the round. */
  key: string;
  /** From the onset to this notice. */
  noticeS: number;
  /** Who comes; null where whoever walks the round does it there and then. */
  come: Come | null;
  /** Keys of those on site to walk the round; none for an alarm. */
  walkers: string[];
  workS: number;
  /** From the onset to everything being put right. */
  putRightS: number;
}

/** What becomes of one onset: the first notice, and the way that puts it right soonest. Null: never. */
export interface Met {
  noticeS: number | null;
  way: Way | null;
}

/**
 * How one course is met by people, for many onsets. Every way of knowing is followed to its end, so that one more can never make the
 * answer later.
 *
 * @param workS   work once somebody stands before it; null: nobody has the means
 * @returns       by onset, s from the beginning of the line
 */
export function meeting(course: CourseDemand, scene: Scene, workS: number | null): (onsetS: number) => Met {
  const met = meetingsOf(scene.looks, course.signs);
  const calls = course.calls.map((call) => ({ call, comes: scene.comes(call.answeredBy) }));
  return (onsetS) => {
    const result: Met = { noticeS: null, way: null };
    for (const { call, comes } of calls) {
      const come = comes(onsetS + call.atS);
      // An alarm that reaches nobody is no notice.
      if (come === null) continue;
      const by = call.key === WATCHDOG ? 'watchdog' : 'alarm';
      offer(result, workS, { by, key: call.key, noticeS: call.atS, come, walkers: [] });
    }
    const seen = firstLook(met, onsetS);
    if (seen) {
      const { key, walkers } = seen.look;
      offer(result, workS, { by: 'round', key, noticeS: seen.afterS, come: null, walkers });
    }
    return result;
  };
}

function offer(met: Met, workS: number | null, found: Omit<Way, 'workS' | 'putRightS'>): void {
  if (met.noticeS === null || found.noticeS < met.noticeS) met.noticeS = found.noticeS;
  if (workS === null) return;
  const putRightS = found.noticeS + (found.come ? comesAfter(found.come) : 0) + workS;
  if (met.way === null || putRightS < met.way.putRightS) met.way = { ...found, workS, putRightS };
}
