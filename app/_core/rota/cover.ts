import { DEFAULTS } from '../equipment/defaults';
import { MORE, take, type Taker } from '../equipment/take';
import type { AnsweredBy } from '../facility/site';
import type { Facility } from '../facility/facility';
import { forward, MINUTE, WEEK, weekSecond } from '../time/week';
import { cutByAway } from './away';
import type { PersonApart } from './rota';
import { cutByNight, type Night, NIGHTS_OF_WEEK } from './night';

/** A stretch of somebody's duty. Times in s since Monday 00:00; it may run past the end of the week. */
export interface Duty {
  fromS: number;
  lengthS: number;
  kind: 'on-site' | 'on-call';
  person: string;
  /** s from being called to having understood and, from home, to leaving. */
  answerS: number;
  /** s from being called to standing before the equipment. */
  responseS: number;
}

/** Whether somebody can do what has to be done, by key of the person. */
export type Able = (person: string) => boolean;

/** Who can come, and how soon, at any second of the week. */
export interface Cover {
  duties: Duty[];
  /** Response of each person when called from home, s. */
  fromHome: Map<string, number>;
  /** Of it, what is needed to have understood and to leave, s. */
  answerFromHomeS: number;
}

/** s to have understood on site, and from home to leave. */
interface Answer {
  onSiteS: number;
  leaveS: number;
}

/** How long the people of a site need, s: to answer, and for the way. */
export interface AnswerTimes extends Answer {
  /** The same by night; null: as by day. */
  night: Answer | null;
  /** By key of the person. */
  wayS: Map<string, number>;
}

/** How long the people of a site need, as measured, as entered or by default. */
export function answerTimes({ site, people }: Pick<Facility, 'site' | 'people'>, t: Taker): AnswerTimes {
  const onSite = take(
    t,
    'site/answerOnSiteMin',
    'answer on site',
    site.answerOnSiteMin,
    MORE,
    DEFAULTS.answerOnSiteMin,
  );
  const onCall = take(
    t,
    'site/answerOnCallMin',
    'answer on call',
    site.answerOnCallMin,
    MORE,
    DEFAULTS.answerOnCallMin,
  );
  const wayS = new Map(people.map((person) => [person.key, MINUTE * travelOf(person, t)]));
  const day: Answer = { onSiteS: onSite * MINUTE, leaveS: onCall * MINUTE };
  return { ...day, night: nightAnswer(site, day, t), wayS };
}

function nightAnswer(
  { answerOnSiteNightMin, answerOnCallNightMin }: Facility['site'],
  day: Answer,
  t: Taker,
): Answer | null {
  if (!(answerOnSiteNightMin ?? answerOnCallNightMin)) return null;
  const taken = (field: string, name: string, figure: typeof answerOnSiteNightMin, dayS: number) => {
    const usual = dayS / MINUTE;
    const fallback = { value: usual, low: usual, high: usual, unit: 'min', source: 'as by day' };
    return MINUTE * take(t, `site/${field}`, name, figure, MORE, fallback);
  };
  return {
    onSiteS: taken('answerOnSiteNightMin', 'answer on site by night', answerOnSiteNightMin, day.onSiteS),
    leaveS: taken('answerOnCallNightMin', 'answer on call by night', answerOnCallNightMin, day.leaveS),
  };
}

/** A stretch of duty, cut where the answers of the night begin and end; whole where they are those of the day. */
export function answeringParts(
  fromS: number,
  toS: number,
  nights: readonly Night[],
  { onSiteS, leaveS, night }: AnswerTimes,
): { fromS: number; toS: number; answer: Answer }[] {
  const day: Answer = { onSiteS, leaveS };
  if (!night) return [{ fromS, toS, answer: day }];
  return cutByNight(fromS, toS, nights).map(({ isNight, ...part }) => ({ ...part, answer: isNight ? night : day }));
}

function travelOf({ key, name, travelMin }: Facility['people'][number], t: Taker): number {
  return take(t, `people/${key}/travelMin`, `way to the site of ${name}`, travelMin, MORE, DEFAULTS.travelMin);
}

/** The rota of a site in seconds. */
export function coverOf(facility: Facility, t: Taker): Cover {
  const times = answerTimes(facility, t);
  const { leaveS, wayS } = times;
  const people: readonly PersonApart[] = facility.people;
  const away = new Map(people.map((person) => [person.key, person.away]));
  const duties = facility.shifts.flatMap((shift) =>
    shift.days.flatMap((day) => {
      const fromS = weekSecond(day, shift.from);
      // A shift that ends when it begins, or before, ends on the next day.
      const lengthS = forward(weekSecond(day, shift.from), weekSecond(day, shift.to)) % 86_400 || 86_400;
      return shift.people.flatMap((person): Duty[] => {
        const way = wayS.get(person);
        // Nobody is known by this key, so nobody comes.
        if (way === undefined) return [];
        const { kind } = shift;
        return cutByAway(fromS, fromS + lengthS, away.get(person)).flatMap((apart) =>
          answeringParts(apart.fromS, apart.toS, NIGHTS_OF_WEEK, times).map((part): Duty => {
            const span = { fromS: part.fromS % WEEK, lengthS: part.toS - part.fromS };
            const { kind: as, answerS, travelS } = answerOf(kind, part.answer, way, apart.wayS);
            return { ...span, kind: as, person, answerS, responseS: answerS + travelS };
          }),
        );
      });
    }),
  );
  const fromHome = new Map([...wayS].map(([person, way]) => [person, leaveS + way]));
  return { duties, fromHome, answerFromHomeS: leaveS };
}

/**
 * How somebody on duty answers: on site at once, from home after the way. Whoever is on site at another site meanwhile comes from
 * there, and is not on site here whatever the rota says; nothing of the way from there is credited.
 *
 * @param wayS     s of the way from home
 * @param apartS   s of the way from the other site; null: they are at none
 */
export function answerOf(
  kind: Duty['kind'],
  answer: Answer,
  wayS: number,
  apartS: number | null,
): Pick<Duty, 'kind' | 'answerS'> & { travelS: number } {
  if (apartS !== null)
    return { kind: 'on-call', answerS: answer.leaveS, travelS: kind === 'on-site' ? apartS : Math.max(wayS, apartS) };
  if (kind === 'on-site') return { kind, answerS: answer.onSiteS, travelS: 0 };
  return { kind, answerS: answer.leaveS, travelS: wayS };
}

/**
 * When the first of those who answer can stand before the equipment. The rota answers while it is on duty; people who are
 * named answer at any hour, from home or, while they are on site, from there.
 * @param calledS s since Monday 00:00 at which they are called
 * @param able who can do what has to be done; everybody when null
 * @returns s after the call; null when nobody ever comes
 */
export function reachedAfter(
  cover: Cover,
  calledS: number,
  answeredBy: AnsweredBy,
  able: Able | null = null,
): number | null {
  if (answeredBy === 'nobody') return null;
  const named = answeredBy === 'rota' ? null : answeredBy;
  const asked = able ? (named ?? []).filter(able) : (named ?? []);
  const fromHome = asked.map((key) => cover.fromHome.get(key)).filter((s) => s !== undefined);
  let soonest: number | null = fromHome.length > 0 ? Math.min(...fromHome) : null;
  for (const duty of cover.duties) {
    if ((named && !named.includes(duty.person)) || (able && !able(duty.person))) continue;
    const into = forward(duty.fromS, calledS);
    // On duty now: called at once. Otherwise the message waits for the beginning of the duty.
    const wait = into < duty.lengthS ? 0 : forward(calledS, duty.fromS);
    const after = wait + duty.responseS;
    if (soonest === null || after < soonest) soonest = after;
  }
  return soonest;
}

/** Whether somebody, of those who are able, is on the premises at a second of the week. */
export function staffed(cover: Cover, atS: number, able: Able | null = null): boolean {
  return cover.duties.some(
    (duty) =>
      duty.kind === 'on-site' && forward(duty.fromS, atS) < duty.lengthS && (able === null || able(duty.person)),
  );
}

/** Hours of the week (0 = Monday 00:00) at whose beginning nobody is on site or on call. */
export function hoursWithNobody(cover: Cover): number[] {
  const hours = Array.from({ length: 168 }, (_, h) => h);
  return hours.filter((h) => !cover.duties.some((duty) => forward(duty.fromS, h * 3600) < duty.lengthS));
}
