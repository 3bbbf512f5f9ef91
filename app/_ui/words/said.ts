import type { Custom } from '#core/units/shown';
import type { HarmClass, Harm, Notice, Outcome } from '#core/review/result';
import { hourWords, worstHour } from '#core/review/words';
import { figure } from '../units/figures';
import { capital } from './capital';
import { lasting, lastingFor } from './lasting';
import type { Names } from './names';

/** How a review is put into words for one person: their units, and what things are called here. */
export interface Speech {
  units: Custom;
  names: Names;
}

/** Where nothing is known by name: a tank is a tank. */
export const PLAIN_NAMES: Names = {
  tank: () => 'a tank',
  equipment: String,
  sensor: String,
  alarm: String,
  round: String,
  safeguard: String,
  circuit: String,
  person: String,
  measures: () => undefined,
};

/** What must be saved from each class of harm, as it stands in a sentence. */
const SAVED: Record<HarmClass, string> = {
  animals: 'To save the animals',
  floor: 'To keep the floor dry',
  equipment: 'To spare the pump',
};

/** A limit of tolerance in words: "above 29.0 °C for 2.0 h". */
function limitSaid({ units }: Speech, harm: Pick<Harm, 'what' | 'direction' | 'limit' | 'forMin'>): string {
  const held = harm.forMin > 0 ? ` for ${lastingFor(harm.forMin)}` : '';
  switch (harm.what) {
    case 'temperature':
      return `${harm.direction} ${figure(units, 'temperature', harm.limit)}${held}`;
    case 'salinity':
      return `${harm.direction} a salinity of ${harm.limit}${held}`;
    case 'oxygen':
      return `${harm.direction} ${harm.limit}\u00a0mg/L of oxygen${held}`;
    case 'level':
      return `${harm.direction} ${Math.round(harm.limit * 100)}\u00a0% of its water${held}`;
    case 'rise-24h':
      return `warmer by ${figure(units, 'difference', harm.limit)} within a day${held && ','}${held}`;
    case 'fall-24h':
      return `colder by ${figure(units, 'difference', harm.limit)} within a day${held && ','}${held}`;
    case 'ammonia':
      return `${harm.direction} ${harm.limit}\u00a0mg/L of un-ionised ammonia${held}`;
    case 'carbon-dioxide':
      return `${harm.direction} ${harm.limit}\u00a0mg/L of carbon dioxide${held}`;
    case 'ph':
      return `${harm.direction} pH\u00a0${harm.limit}${held}`;
    case 'oxidant':
      return `${harm.direction} ${harm.limit}\u00a0mg/L of oxidant${held}`;
    case 'water-on-floor':
      return 'water on the floor';
    case 'pump-dry':
      return 'the return pump draws air';
  }
}

/** The tank a harm befalls, by the name the review tells it by, or as it is called here. */
function tankSaid({ names }: Speech, { tank, tankName }: Harm): string {
  return tankName ?? names.tank(tank);
}

/** A harm in words, with where it befalls. */
export function harmSaid(speech: Speech, harm: Harm): string {
  if (harm.what === 'water-on-floor') return 'Water on the floor';
  if (harm.what === 'pump-dry') return 'The return pump draws air';
  return capital(`${tankSaid(speech, harm)} ${limitSaid(speech, harm)}`);
}

/** A harm as a sentence, some time after the fault begins. */
function harmHappens(speech: Speech, harm: Harm, afterS: number): string {
  const after = afterS < 1 ? 'At once' : `After ${lasting(afterS)},`;
  const tank = tankSaid(speech, harm);
  switch (harm.what) {
    case 'water-on-floor':
      return `${after} there is water on the floor.`;
    case 'pump-dry':
      return `${after} the return pump draws air.`;
    case 'rise-24h':
    case 'fall-24h':
      return `${after} ${tank} ${harm.forMin > 0 ? 'has been' : 'has become'} ${limitSaid(speech, harm)}.`;
    case 'temperature':
    case 'salinity':
    case 'oxygen':
    case 'level':
    case 'ammonia':
    case 'carbon-dioxide':
    case 'ph':
    case 'oxidant':
      return `${after} ${tank} ${harm.forMin > 0 ? 'has been' : 'is'} ${limitSaid(speech, harm)}.`;
  }
}

/** The harm of an outcome as a sentence, at its worst hour. */
export function harmAtWorst(speech: Speech, outcome: Outcome): string {
  return harmHappens(speech, outcome.harm, outcome.harmS[worstHour(outcome)] ?? 0);
}

/** An hour of the week in a sentence: "Monday at 18:00". */
export function hourSaid(hour: number): string {
  return hourWords(hour).replace(' ', ' at ');
}

/** Who or what comes to know first, in words. */
export function noticeSaid({ names }: Speech, notice: Notice | undefined): string {
  switch (notice?.by) {
    case 'alarm':
      return `by the alarm “${names.alarm(notice.key ?? '')}”`;
    case 'watchdog':
      return 'by the watch outside the site';
    case 'round':
      return `on the round “${names.round(notice.key ?? '')}”`;
    case 'nobody':
    case undefined:
      return 'by nobody';
  }
}

/**
 * One outcome told in sentences with its figures.
 * @param hour hour of the week at which the fault begins, 0 = Monday 00:00; the worst one when left out
 */
export function outcomeSaid(speech: Speech, outcome: Outcome, hour = worstHour(outcome)): string {
  const harm = outcome.harmS[hour] ?? null;
  const first = harm === null ? '' : `${harmHappens(speech, outcome.harm, harm)} `;
  return `${first}${noticeAt(speech, outcome, hour)} ${SAVED[outcome.harm.class]} ${rescueAt(outcome, hour)}.`;
}

function noticeAt(speech: Speech, outcome: Outcome, hour: number): string {
  const notice = outcome.noticeS[hour] ?? null;
  if (notice === null) return 'Nobody notices it within seven days.';
  return `It is noticed ${afterSaid(notice)}, ${noticeSaid(speech, outcome.noticeBy[hour])}.`;
}

function rescueAt(outcome: Outcome, hour: number): string {
  const last = outcome.lastChanceS[hour] ?? 0;
  const right = outcome.putRightS[hour] ?? null;
  if (last < 1) return 'nothing that anybody does after it begins helps';
  const when = isSameAllWeek(outcome) ? 'at whatever hour it begins' : `beginning on a ${hourSaid(hour)}`;
  const rota =
    right === null
      ? 'nobody has it put right'
      : `${right > last ? 'nobody has it put right before' : 'it is put right after'} ${lasting(right)}`;
  return `it must be put right within ${lasting(last)}; ${when}, ${rota}`;
}

/** Whether it makes no difference at which hour it begins, to the minute. */
function isSameAllWeek({ harmS, spareS }: Outcome): boolean {
  return (
    new Set(spareS.map((s, h) => (harmS[h] === null ? 'none' : s === null ? 'never' : Math.round(s / 60)))).size === 1
  );
}

function afterSaid(seconds: number): string {
  return seconds < 1 ? 'at once' : `after ${lasting(seconds)}`;
}

/** Time to spare in words, for a table cell. */
export function spareSaid(seconds: number | null): string {
  if (seconds === null) return 'nobody comes';
  return seconds < 0 ? `short by ${lasting(seconds)}` : lasting(seconds);
}
