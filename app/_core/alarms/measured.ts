import { DEFAULTS } from '../equipment/defaults';
import type { Facility } from '../facility/facility';
import type { Figure } from '../facility/figure';
import type { AnsweredBy } from '../facility/site';
import { lastTest } from '../plans/credit';
import type { Safeguard } from '../plans/safeguard';
import type { AlarmDefinition } from './definition';
import type { Answers, MeasuredAnswers } from './answers';

/** What the record of alarms and test calls says of the people of a site. */
export interface PeopleFacts extends MeasuredAnswers {
  /** Who was reached, by key of the person, and on which day last (ISO date at the site). */
  reached: { person: string; on: string }[];
}

/** Nothing was measured. */
export const NOTHING_MEASURED: PeopleFacts = { reached: [], onSite: null, onCall: null };

/**
 * A facility as a review is to see it: with what was measured of its people in place of what was entered or taken by default.
 * What is described stays as it is; this is only looked at.
 */
export function withMeasured(facility: Facility, facts: PeopleFacts): Facility {
  const { site, systems, safeguards } = facility;
  const alarms = systems.flatMap((system) => system.alarms);
  const { watchdog } = site;
  const proved = (one: Safeguard, own: readonly AlarmDefinition[]) =>
    // What calls from outside the site goes another way than Holdfast's own calls.
    one.key === watchdog?.safeguard ? one : withReached(one, own, facility, facts);
  return {
    ...facility,
    site: { ...site, ...answerFigures(facility, facts) },
    safeguards: safeguards.map((one) => proved(one, alarms)),
    systems: systems.map((system) => ({
      ...system,
      safeguards: system.safeguards.map((one) => proved(one, system.alarms)),
    })),
  };
}

/**
 * A safeguard that proves the way of alarms to a person, with a test for the day from which on every alarm that names it had
 * somebody who was reached. A test that failed is not outdone by a call: what failed may lie before Holdfast.
 */
function withReached(
  one: Safeguard,
  alarms: readonly AlarmDefinition[],
  facility: Facility,
  { reached }: PeopleFacts,
): Safeguard {
  if (one.kind !== 'alarm' || lastTest(one, '9999-12-31')?.result === 'failed') return one;
  const days = alarms
    .filter(({ safeguard }) => safeguard === one.key)
    .map(({ answeredBy }) => {
      const people = answerers(facility, answeredBy);
      const own = reached.filter(({ person }) => people.includes(person)).map(({ on }) => on);
      return own.sort().at(-1) ?? null;
    });
  const on = days.includes(null) ? null : days.flatMap((day) => day ?? []).sort()[0];
  if (on === null || on === undefined) return one;
  const seen = 'Somebody who answers was reached by a test call, or acknowledged an alarm they had been told of.';
  return { ...one, tests: [...one.tests, { on, result: 'worked', seen }] };
}

function answerers({ shifts }: Facility, answeredBy: AnsweredBy): string[] {
  if (answeredBy === 'nobody') return [];
  return answeredBy === 'rota' ? shifts.flatMap(({ people }) => people) : answeredBy;
}

/**
 * Times to answer as they were measured: the median, with the tenth and ninetieth percentile as plausible range, so that a case
 * which the slow nights would lose is marked unsure. For whoever is on call, what is measured is having understood; the time
 * from there to leaving home is in no record, and the difference of the two stated figures stands for it.
 */
function answerFigures({ site }: Facility, { onSite, onCall, night }: PeopleFacts): Partial<Facility['site']> {
  const stated = (figure: Figure | undefined, otherwise: number) => figure?.value ?? otherwise;
  const leave =
    stated(site.answerOnCallMin, DEFAULTS.answerOnCallMin.value) -
    stated(site.answerOnSiteMin, DEFAULTS.answerOnSiteMin.value);
  return {
    ...(onSite === null ? {} : { answerOnSiteMin: figureOf(onSite, 0, site.answerOnSiteMin) }),
    ...(onCall === null ? {} : { answerOnCallMin: figureOf(onCall, Math.max(0, leave), site.answerOnCallMin) }),
    ...(night?.onSite ? { answerOnSiteNightMin: figureOf(night.onSite, 0, site.answerOnSiteNightMin) } : {}),
    ...(night?.onCall
      ? { answerOnCallNightMin: figureOf(night.onCall, Math.max(0, leave), site.answerOnCallNightMin) }
      : {}),
  };
}

function figureOf({ cases, unanswered, medianMin, lowMin, highMin }: Answers, moreMin: number, was?: Figure): Figure {
  const parts = [
    `measured: median of ${cases} alarms`,
    unanswered === 0 ? '' : `${unanswered} of them never acknowledged`,
    moreMin === 0 ? '' : `and ${moreMin} min from having understood to leaving, by the stated figures`,
    was?.value === undefined || was.value === null ? '' : `stated was ${was.value} min`,
  ];
  return {
    value: medianMin + moreMin,
    low: lowMin + moreMin,
    high: highMin + moreMin,
    origin: 'measured',
    source: parts.filter(Boolean).join('; '),
  };
}
