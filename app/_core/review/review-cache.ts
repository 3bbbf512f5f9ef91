import type { Facility } from '../facility/facility';
import type { StateName, System } from '../facility/system';
import type { Upset } from '../faults/upset';
import { safeguardsOf, type Credit } from '../plans/credit';
import { Knots } from '../simulate/knots';
import type { Nominal } from '../simulate/nominal';
import type { News } from './news';
import type { Courses } from './outcome';
import type { Trial } from './trial';

/**
 * What the water did in the reviews of one system, kept for the next one. All of it follows from what `waterText` says, which
 * site and system alone decide: as long as that stays the same, a change of people, rounds, tests, times of work or names
 * costs no run of the model. When it does not, everything kept is dropped.
 */
export interface ReviewCache {
  water: string;
  nominals: Map<string, Nominal>;
  standing: Map<string, Map<StateName, News>>;
  told: Map<string, Map<string, News>>;
  courses: Map<string, Courses>;
}

/** A cache that knows nothing yet. */
export function emptyCache(): ReviewCache {
  const map = <K, V>() => new Map<K, V>();
  return { water: '', nominals: map(), standing: map(), told: map(), courses: map() };
}

/** Make a cache fit for a site and system: it forgets what another water did. */
export function fitTo(cache: ReviewCache, facility: Facility, system: System): void {
  const water = waterText(facility, system);
  if (cache.water === water) return;
  Object.assign(cache, emptyCache(), { water });
}

/**
 * All that a run of a system can depend on, as text. It leaves out, by name, what only people, rounds and the paper have to
 * do with; whatever else is described counts, also what nobody has thought of yet.
 */
function waterText(facility: Facility, system: System): string {
  const {
    people: _p,
    shifts: _s,
    rounds: _r,
    sheets: _h,
    safeguards: _g,
    systems: _y,
    site,
    rooms,
    ...shared
  } = facility;
  const {
    answerOnSiteMin: _a,
    answerOnCallMin: _c,
    answerOnSiteNightMin: _n,
    answerOnCallNightMin: _v,
    powerCut: _u,
    callSteps: _l,
    repeatCallsMin: _i,
    testCallEachDays: _t,
    keepReadingsMonths: _k,
    competences: _w,
    quietHours: _f,
    waysTo: _e,
    watchdog,
    ...place
  } = site;
  const { safeguards: _o, ...own } = system;
  const parts = {
    ...shared,
    site: { ...place, watchdog: watchdog && { ...watchdog, answeredBy: null } },
    room: rooms.find(({ key }) => key === system.room),
    system: {
      ...own,
      equipment: system.equipment.map(({ repairMin: _m, spareMin: _q, ...rest }) => rest),
      sensors: system.sensors.map(({ calibrationDue: _d, calibrateEveryDays: _c, ...rest }) => rest),
      alarms: system.alarms.map(heldTo),
    },
  };
  return JSON.stringify(parts, (key, value: unknown) => (key === 'name' ? undefined : value));
}

/** What an alarm is held to, without what only tells people of it. */
function heldTo(alarm: System['alarms'][number]): object {
  const {
    answeredBy: _n,
    escalateAfterMin: _e,
    priority: _p,
    cause: _c,
    consequence: _q,
    whatToDo: _w,
    ...held
  } = alarm;
  return held;
}

/** Which safeguards a column counts on, as text: with the water, all that tells one column's runs from another's. */
export function creditText(facility: Facility, system: System, credit: Credit): string {
  const keys = safeguardsOf(facility, system).map(({ key }) => key);
  return [`${credit(undefined)}`, ...keys.filter((key) => credit(key))].join(' ');
}

/** An upset as text: the same for the same, in whatever order it was filled in. */
export function upsetText(upset: Upset): string {
  return JSON.stringify(upset, (_, value: unknown) => {
    if (value instanceof Set) return [...value].sort();
    if (value instanceof Map) return [...value].sort(([a], [b]) => (String(a) < String(b) ? -1 : 1));
    return value === Number.POSITIVE_INFINITY ? 'never' : value;
  });
}

/** Courses as they are kept: the way of the water only where a harm may yet be put right in time. */
export function kept(courses: Courses): Courses {
  return { ...courses, trials: courses.trials.map((trial) => (trial.record.harms.length > 0 ? trial : ended(trial))) };
}

function ended(trial: Trial): Trial {
  return { ...trial, record: { ...trial.record, knots: new Knots(0) } };
}
