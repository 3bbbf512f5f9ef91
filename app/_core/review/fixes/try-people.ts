import { taker } from '../../equipment/take';
import { coverOf } from '../../rota/cover';
import { walksOf } from '../../rounds/walks';
import { Knots } from '../../simulate/knots';
import { prime } from '../combined/dead-safeguards';
import { contextOf, type View } from '../context';
import { coursesOf } from '../courses';
import { newsOf } from '../news';
import { type Courses, outcomesOf } from '../outcome';
import { repairTime } from '../repair';
import { type Candidate, changed } from './candidates';
import type { After } from './effects';
import { isOpen, type Judged, sceneOf, type Stand } from './stand';

/** The open fault cases of a description, with what every proposed alarm would raise in them. */
export interface Watched {
  view: View;
  cases: { id: string; judged: Judged; courses: Courses }[];
}

/**
 * Watch the open fault cases with every change that lets people know more at once. Such a change leaves the water as it is, so one
 * run tells of all of them, and the last chances that were found stay.
 */
export function watch(stand: Stand, on: string, candidates: readonly Candidate[]): Watched {
  const all = candidates.filter(({ remedy }) => remedy.changes === 'people');
  const facility = all.reduce((site, candidate) => {
    const system = site.systems.find(({ key }) => key === stand.system.key) ?? stand.system;
    return changed({ facility: site, system }, candidate);
  }, stand.facility);
  const { context, view } = sceneOf(facility, stand.system.key, on);
  const open = [...stand.cases].filter(([, { judgement }]) => isOpen(judgement));
  const cases = open.map(([id, judged]) => {
    const full = coursesOf(context, view, judged.subject, 'claimed');
    prime(full, judged.judgement);
    // Standing alarms and what the fault tells in normal running are found here, while every alarm is there.
    for (const trial of full.trials) newsOf(context, view, judged.subject, 'claimed', trial);
    return { id, judged, courses: light(full) };
  });
  return { view, cases };
}

/** Judge the open fault cases with one change that lets people know more, or come sooner. */
export function tryPeople(stand: Stand, on: string, watched: Watched, candidate: Candidate): After {
  const facility = changed(stand, candidate);
  const system = facility.systems.find(({ key }) => key === stand.system.key) ?? stand.system;
  const context = contextOf(facility, system, on);
  const cover = coverOf(facility, taker('nominal'));
  const view = { ...watched.view, cover, walks: walksOf(facility, system.key, cover) };
  return new Map(
    watched.cases.map(({ id, judged, courses }) => {
      const repairS = repairTime(context, view, judged.subject);
      const outcomes = outcomesOf(context, view, judged.subject, courses, 'claimed', repairS);
      const judgement = { verdict: outcomes[0]?.verdict ?? judged.judgement.verdict, outcomes, acted: [] };
      return [id, { ...judged, judgement }];
    }),
  );
}

/** Courses without the state at every step, which nobody asks for once the last chances are known. */
function light(courses: Courses): Courses {
  return {
    ...courses,
    trials: courses.trials.map((trial) => ({ ...trial, record: { ...trial.record, knots: new Knots(1) } })),
  };
}
