import { DAYS } from '../facility/site';
import type { FaultCase, Harm, Judgement, Outcome, Verdict } from './result';

/** Verdicts in words, as they stand on screen and paper. */
export const VERDICT_WORDS: Record<Verdict, string> = {
  'not-assessed': 'not assessed',
  dormant: 'dormant',
  holds: 'holds',
  'no-warning': 'no warning',
  'too-late': 'too late',
  'some-hours': 'some hours',
  covered: 'covered',
};

/** Names that a sentence lists before it counts the rest. */
const LISTED = 3;
const DAY_WORDS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** A span of time as people say it: seconds to two minutes, minutes to two hours, hours to two days, then days. */
export function span(seconds: number): string {
  const s = Math.abs(seconds);
  if (s < 120) return `${Math.round(s)} s`;
  if (s < 7200) return `${Math.round(s / 60)} min`;
  if (s < 172_800) return `${(s / 3600).toFixed(1)} h`;
  return `${(s / 86_400).toFixed(1)} days`;
}

/** An hour of the week (0 = Monday 00:00) in words. */
export function hourWords(hour: number): string {
  const day = DAY_WORDS[Math.floor(hour / 24) % DAYS.length] ?? '';
  return `${day} ${String(hour % 24).padStart(2, '0')}:00`;
}

/** What a harm is, in words with its limit. */
export function harmWords(harm: Harm): string {
  const tank = harm.tankName ?? harm.tank;
  const held = harm.forMin > 0 ? ` for ${span(harm.forMin * 60).replace('.0 ', ' ')}` : '';
  switch (harm.what) {
    case 'temperature':
      return `${tank} ${harm.direction} ${harm.limit} °C${held}`;
    case 'salinity':
      return `${tank} ${harm.direction} a salinity of ${harm.limit}${held}`;
    case 'oxygen':
      return `${tank} ${harm.direction} ${harm.limit} mg/L of oxygen${held}`;
    case 'level':
      return `${tank} ${harm.direction} ${Math.round(harm.limit * 100)} % of its water${held}`;
    case 'rise-24h':
      return `${tank} warmer by ${harm.limit} K within a day${held && ','}${held}`;
    case 'fall-24h':
      return `${tank} colder by ${harm.limit} K within a day${held && ','}${held}`;
    case 'ammonia':
      return `${tank} ${harm.direction} ${harm.limit} mg/L of un-ionised ammonia (as N)${held}`;
    case 'carbon-dioxide':
      return `${tank} ${harm.direction} ${harm.limit} mg/L of carbon dioxide${held}`;
    case 'ph':
      return `${tank} ${harm.direction} pH ${harm.limit}${held}`;
    case 'oxidant':
      return `${tank} ${harm.direction} ${harm.limit} mg/L of oxidant (as chlorine)${held}`;
    case 'water-on-floor':
      return 'water on the floor';
    case 'pump-dry':
      return `the return pump in ${tank} draws air`;
  }
}

/** The hour of the week with the least time to spare; the first where nobody ever comes. */
export function worstHour(outcome: Pick<Outcome, 'harmS' | 'spareS'>): number {
  let worst = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [h, harm] of outcome.harmS.entries()) {
    if (harm === null) continue;
    const spare = outcome.spareS[h] ?? Number.NEGATIVE_INFINITY;
    if (spare < least) {
      least = spare;
      worst = h;
    }
  }
  return worst;
}

/** One outcome in sentences with its figures, at its worst hour. */
export function outcomeSentence(outcome: Outcome): string {
  const h = worstHour(outcome);
  const notice = outcome.noticeS[h] ?? null;
  const last = outcome.lastChanceS[h] ?? 0;
  const right = outcome.putRightS[h] ?? null;
  const harm = `Harm ${after(outcome.harmS[h] ?? 0)} (${harmWords(outcome.harm)}).`;
  const helps = last < 1 ? 'nothing done after it begins avoids it' : null;
  if (notice === null)
    return `${harm} Nobody notices; ${helps ?? `it would have to be put right within ${span(last)}`}.`;
  const known = `Noticed ${after(notice)}; ${helps ?? `must be put right within ${span(last)}`}`;
  const when = isSameAllWeek(outcome) ? 'at any hour' : `at worst, from ${hourWords(h)},`;
  const rota =
    right === null ? 'nobody ever puts it right' : `${helps ? 'it is put right after' : 'that takes'} ${span(right)}`;
  return `${harm} ${known}; ${when} ${rota}.`;
}

/** Whether it makes no difference to anybody at which hour it begins, to the minute. */
function isSameAllWeek({ harmS, spareS }: Outcome): boolean {
  const minutes = spareS.map((s, h) =>
    harmS[h] === null ? 'none' : s === null ? 'never' : String(Math.round(s / 60)),
  );
  return new Set(minutes).size === 1;
}

function after(seconds: number): string {
  return seconds < 1 ? 'at once' : `after ${span(seconds)}`;
}

/** What a case leads to, in words. */
export function judgementSentence(judgement: Judgement): string {
  const [outcome] = judgement.outcomes;
  if (outcome) return outcomeSentence(outcome);
  if (judgement.reason) return `Not assessed: ${judgement.reason}.`;
  return judgement.verdict === 'dormant'
    ? `Harmless by itself, but it puts out of action: ${listed(judgement.disables ?? [])}.`
    : 'No harm within seven days though nobody comes.';
}

/** Up to three names, and how many more. */
function listed(names: readonly string[]): string {
  const rest = names.length - LISTED;
  return rest > 1 ? `${names.slice(0, LISTED).join(', ')} and ${rest} more` : names.join(', ');
}

/** A case by name: what befalls what, and when it matters in which state. */
export function caseTitle(c: Pick<FaultCase, 'title' | 'thing' | 'state'>): string {
  const state = c.state.replace('-', ' ');
  if (c.thing.kind === 'state') return c.title;
  if (c.thing.kind === 'system')
    return `${state.charAt(0).toUpperCase()}${state.slice(1)} by itself, with nothing wrong`;
  return `${c.thing.name}: ${lower(c.title)}${c.state === 'normal' ? '' : ` during ${state}`}`;
}

/** A title within a sentence: its first letter small, unless it begins with an abbreviation such as RCD. */
export function lower(text: string): string {
  return /^[A-Z]{2}/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);
}
