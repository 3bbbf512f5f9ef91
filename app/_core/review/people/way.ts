import { type Come, comesAfter } from '../../rota/answering';
import { WATCHDOG } from '../../simulate/build-alarms';
import type { Notice } from '../result';
import type { CaseDemand, CourseDemand } from './demand';
import { firstLook, type Look, meetingsOf } from './looks';
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
  /** Keys of those on site to walk the round who can do it; none for an alarm. */
  walkers: string[];
  /** Until what the work needs is there. */
  spareS: number;
  workS: number;
  /** From the onset to everything being put right. */
  putRightS: number;
}

/** What becomes of one onset: the first notice, and the way that puts it right soonest. Null: never. */
export interface Met {
  noticeS: number | null;
  way: Way | null;
}

/** What the people of a fault case need once they stand before it. */
export type Work = Pick<CaseDemand, 'type' | 'spareS' | 'workS'>;

/**
 * How one course is met by people, for many onsets. Every way of knowing is followed to its end, so that one more can never make the
 * answer later. Whoever cannot do the work still notices, and calls whoever can.
 *
 * @returns       by onset, s from the beginning of the line
 */
export function meeting(course: CourseDemand, scene: Scene, work: Work): (onsetS: number) => Met {
  const met = meetingsOf(scene.looks, course.signs);
  const anybody = scene.hands(null);
  const { able, comes } = scene.hands(work.type);
  const calls = course.calls.map(({ key, atS, answeredBy }) => ({
    source: { by: key === WATCHDOG ? ('watchdog' as const) : ('alarm' as const), key },
    ...{ atS, reached: anybody.comes(answeredBy), mended: comes(answeredBy) },
  }));
  const walkersOf = ({ walkers }: Look) => (able ? walkers.filter(able) : walkers);
  return (onsetS) => {
    const result: Met = { noticeS: null, way: null };
    for (const { source, atS, reached, mended } of calls) {
      const first = reached(onsetS + atS);
      // An alarm that reaches nobody is no notice.
      if (first === null) continue;
      noticed(result, atS);
      const come = able ? mended(onsetS + atS) : first;
      if (come) offer(result, work, source, atS, come, NONE);
    }
    const seen = firstLook(met, onsetS);
    if (!seen) return result;
    noticed(result, seen.afterS);
    const own = able ? firstLook(met, onsetS, (look) => walkersOf(look).length > 0) : seen;
    if (own) offer(result, work, roundOf(own.look), own.afterS, null, walkersOf(own.look));
    const come = able ? comes('rota')(onsetS + seen.afterS) : null;
    if (come) offer(result, work, roundOf(seen.look), seen.afterS, come, NONE);
    return result;
  };
}

const NONE: string[] = [];

function roundOf({ key }: Look) {
  return { by: 'round' as const, key };
}

function noticed(met: Met, noticeS: number): void {
  if (met.noticeS === null || noticeS < met.noticeS) met.noticeS = noticeS;
}

/** Take a way into account; it is made only where it is sooner than what is known. */
function offer(
  met: Met,
  { spareS, workS }: Work,
  { by, key }: Pick<Way, 'by' | 'key'>,
  noticeS: number,
  come: Come | null,
  walkers: string[],
): void {
  if (workS === null) return;
  const putRightS = noticeS + (come ? comesAfter(come) : 0) + spareS + workS;
  if (met.way && met.way.putRightS <= putRightS) return;
  met.way = { by, key, noticeS, come, walkers, spareS, workS, putRightS };
}
