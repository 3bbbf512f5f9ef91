import { daysBetween } from '../time/days';
import { type Instant, instantOf, wallClock } from '../time/zone';
import { addDays } from '../time/add-days';
import rules from './rest-rules.json';
import { type Rota, type Turn, turnsOf } from './turns';

/** A rule about rest, by its name. */
export type RestRule = keyof typeof rules;

/** What each rule asks, how much, and where it stands. They warn and never hinder. */
export const REST_RULES: Readonly<Record<RestRule, { limit: number; unit: string; says: string; source: string }>> =
  rules;

/** A rule that a rota may breach for somebody. */
export interface RestWarning {
  rule: RestRule;
  /** Key of the person. */
  person: string;
  /** Beginning of the duty at which it is so for the first time. */
  at: Instant;
  /** What the rota comes to, in the rule's unit: the least rest, or the most work. */
  comesTo: number;
  /** At how many duties it is so; 1 for an average. */
  times: number;
}

/** Work without a break: turns on site that follow one another or overlap. */
interface Work {
  start: Instant;
  end: Instant;
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const WEEK_MS = 7 * DAY_MS;
/** Part of the night that makes a night of a duty, ms. */
const NIGHT_MS = 3 * HOUR_MS;

/**
 * What of a rota may breach rules about rest: duties on site count as work, being on call at home as rest. All lengths are
 * true ones, on both nights on which the clocks change. Of one person and rule, the worst is told with the first.
 * @param from first moment at which a duty looked at begins
 * @param to the moment after the last
 * @returns warnings by person, in the order of the people and rules
 * @throws RangeError when the site's zone is unknown
 */
export function restWarnings(rota: Rota, from: Instant, to: Instant): RestWarning[] {
  // Work that begins within the stretch is judged by what follows it, up to a week later.
  const turns = turnsOf(rota, from, to + WEEK_MS + DAY_MS).filter(({ kind }) => kind === 'on-site');
  return rota.people.flatMap(({ key }) => {
    const works = workOf(turns.filter(({ person }) => person === key));
    const judged = works.filter(({ start }) => start >= from && start < to);
    const found: [RestRule, Breach[]][] = [
      ['daily-rest', shortRest(judged, works, DAY_MS, 'daily-rest')],
      ['weekly-rest', shortRest(judged, works, WEEK_MS, 'weekly-rest')],
      ['weekly-hours', average(judged, to - from)],
      ['long-shift', longShifts(judged)],
      ['nights-in-a-row', inARow(judged, rota.site.zone, 'nights-in-a-row', nightOf)],
      ['days-in-a-row', inARow(judged, rota.site.zone, 'days-in-a-row', dayOf)],
    ];
    return found.flatMap(([rule, breaches]) => told(rule, key, breaches));
  });
}

interface Breach {
  at: Instant;
  comesTo: number;
}

function told(rule: RestRule, person: string, breaches: Breach[]): RestWarning[] {
  const [first] = breaches;
  if (!first) return [];
  const isRest = rule === 'daily-rest' || rule === 'weekly-rest';
  const all = breaches.map(({ comesTo }) => comesTo);
  const comesTo = isRest ? Math.min(...all) : Math.max(...all);
  return [{ rule, person, at: first.at, comesTo, times: breaches.length }];
}

function workOf(turns: readonly Turn[]): Work[] {
  const works: Work[] = [];
  for (const { start, end } of turns) {
    const last = works.at(-1);
    if (last && start <= last.end) last.end = Math.max(last.end, end);
    else works.push({ start, end });
  }
  return works;
}

/** Work after whose beginning no rest is long enough within a window; hours of the longest there is. */
function shortRest(judged: Work[], works: Work[], windowMs: number, rule: RestRule): Breach[] {
  return judged.flatMap(({ start }) => {
    const until = start + windowMs;
    const within = works.filter((work) => work.end > start && work.start < until);
    const rests = within.map(({ end }, at) => Math.min(within[at + 1]?.start ?? until, until) - end);
    const comesTo = Math.max(0, ...rests) / HOUR_MS;
    return comesTo < REST_RULES[rule].limit ? [{ at: start, comesTo }] : [];
  });
}

function average(judged: Work[], spanMs: number): Breach[] {
  const worked = judged.reduce((sum, { start, end }) => sum + end - start, 0);
  const comesTo = worked / HOUR_MS / (spanMs / WEEK_MS);
  const [first] = judged;
  return first && comesTo > REST_RULES['weekly-hours'].limit ? [{ at: first.start, comesTo }] : [];
}

function longShifts(judged: Work[]): Breach[] {
  const hours = judged.map(({ start, end }) => ({ at: start, comesTo: (end - start) / HOUR_MS }));
  return hours.filter(({ comesTo }) => comesTo > REST_RULES['long-shift'].limit);
}

/** Days on which one works, by when the work begins. */
function dayOf({ start }: Work, zone: string): string {
  return wallClock(zone, start).date;
}

/** The evening of the night one works through; null when it is no night. */
function nightOf(work: Work, zone: string): string | null {
  const day = dayOf(work, zone);
  const isNight = (evening: string) => {
    const [from, to] = [instantOf(zone, evening, '23:00'), instantOf(zone, addDays(evening, 1), '06:00')];
    return Math.min(work.end, to) - Math.max(work.start, from) >= NIGHT_MS;
  };
  return [addDays(day, -1), day].find(isNight) ?? null;
}

/** Runs of days or nights that are longer than the rule has it; where each passes the limit. */
function inARow(
  judged: Work[],
  zone: string,
  rule: RestRule,
  dateOf: (work: Work, zone: string) => string | null,
): Breach[] {
  const breaches: Breach[] = [];
  let last = '';
  let run = 0;
  for (const work of judged) {
    const date = dateOf(work, zone);
    if (date === null || date === last) continue;
    run = last !== '' && daysBetween(last, date) === 1 ? run + 1 : 1;
    last = date;
    const breach = breaches.at(-1);
    if (run === REST_RULES[rule].limit + 1) breaches.push({ at: work.start, comesTo: run });
    else if (breach && run > REST_RULES[rule].limit) breach.comesTo = run;
  }
  return breaches;
}
