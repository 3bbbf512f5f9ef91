import { momentOf } from '../last-chance';
import { rawNews } from '../news';
import { outcomesOf } from '../outcome';
import { coursesOf } from '../courses';
import { repairTime } from '../repair';
import type { View } from '../context';
import type { Judgement, Verdict } from '../result';
import type { Combination, Part } from '../study';
import { type Subject, type Trial, tryAt } from '../trial';
import { DAY, HOUR } from '../../time/week';
import { graveAlone } from './causes/cause';
import { combined } from './combination';
import { jointly } from './joint';
import type { Look } from './look';
import { secondFailures } from './second-failures';

/** A fault that was noticed, acknowledged and is being lived with, and another some time after. */
export interface Steps {
  first: Subject;
  /** The second, on top of the first. */
  second: Subject;
  /** s from the first to the second. */
  gapS: number;
  parts: Part[];
  because: string;
}

/**
 * Every fault that is followed by another of what was to stand in for it. What the first raised was acknowledged and does not
 * call again; what the first shows on a round is known. So only what the second raises or shows by itself tells of it. Times run
 * from the second. Where the first alone does harm before the second begins, that is the first one's own case.
 */
export function twoSteps(look: Look): Combination[] {
  return secondFailures(look).flatMap((steps): Combination[] => {
    const judgement = judgeSteps(look, steps);
    if (!judgement) return [];
    const alone: Verdict = graveAlone(look, [steps.first, steps.second]);
    const { parts, because } = steps;
    return [combined({ kind: 'two-step', state: 'normal', parts, because, alone, judgement, perYear: null })];
  });
}

/** Judge the second of two steps, as claimed; null where the first does harm before it. */
function judgeSteps({ context, view }: Look, { first, second, gapS }: Steps): Judgement | null {
  const tried = new Map<number, Trial>();
  const trialAt = (hour: number): Trial => {
    const begins = (((hour - gapS / HOUR) % 24) + 24) % 24;
    const made = tried.get(hour) ?? tryAt(context, view, first, 'claimed', begins);
    tried.set(hour, made);
    return made;
  };
  const isEarly = ({ record }: Trial) => record.harms.some(({ atS }) => atS <= gapS);
  if ([0, 12].map(trialAt).some(isEarly)) return null;
  const later: View = {
    ...view,
    nominal: { ...view.nominal, at: (hour) => momentOf(trialAt(hour), momentS(trialAt(hour), gapS)) },
    standing: new Map([['normal', known(trialAt(12), gapS)]]),
    told: new Map(),
  };
  const both = jointly([first, second]);
  const courses = coursesOf(context, later, both, 'claimed');
  const repairS = repairTime(context, view, second);
  const outcomes = outcomesOf(context, later, both, courses, 'claimed', repairS);
  const judgement = { verdict: outcomes[0]?.verdict ?? ('holds' as const), outcomes, acted: [] };
  return judgement;
}

/** A course that has come to its rhythm stands for what follows, at the same time of day. */
function momentS({ record: { endS } }: Trial, gapS: number): number {
  const days = Math.ceil(Math.max(0, gapS - endS) / DAY);
  return Math.max(0, gapS - days * DAY);
}

/** What the first step had raised and shown by then. */
function known(trial: Trial, gapS: number) {
  const { alarms, signs, leanedOn } = rawNews(trial);
  const by = <T>(times: Map<T, number>) => new Map([...times].filter(([, atS]) => atS <= gapS));
  return { alarms: by(alarms), signs: by(signs), leanedOn };
}
