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
  const held = harm.forMin > 0 ? ` for ${span(harm.forMin * 60)}` : '';
  switch (harm.what) {
    case 'temperature':
      return `${harm.tank} ${harm.direction} ${harm.limit} °C${held}`;
    case 'salinity':
      return `${harm.tank} ${harm.direction} a salinity of ${harm.limit}${held}`;
    case 'oxygen':
      return `${harm.tank} ${harm.direction} ${harm.limit} mg/L of oxygen${held}`;
    case 'level':
      return `${harm.tank} ${harm.direction} ${Math.round(harm.limit * 100)} % of its water${held}`;
    case 'rise-24h':
      return `${harm.tank} warmer by ${harm.limit} K within a day`;
    case 'fall-24h':
      return `${harm.tank} colder by ${harm.limit} K within a day`;
    case 'water-on-floor':
      return 'water on the floor';
    case 'pump-dry':
      return `the return pump in ${harm.tank} draws air`;
  }
}

/** The hour of the week with the least time to spare; the first where nobody ever comes. */
export function worstHour(outcome: Outcome): number {
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

/** One outcome as a sentence with its figures, at its worst hour. */
export function outcomeSentence(outcome: Outcome): string {
  const h = worstHour(outcome);
  const notice = outcome.noticeS[h] ?? null;
  const last = outcome.lastChanceS[h] ?? 0;
  const right = outcome.putRightS[h] ?? null;
  const parts = [
    `${harmWords(outcome.harm)} after ${span(outcome.harmS[h] ?? 0)}`,
    notice === null ? 'nobody notices' : `noticed after ${span(notice)}`,
    last <= 0
      ? 'nothing done afterwards avoids it'
      : `to avoid it somebody must have put it right within ${span(last)}`,
    right === null
      ? `from ${hourWords(h)} nobody has it put right`
      : `from ${hourWords(h)} it is put right after ${span(right)}`,
  ];
  return `${parts.join('; ')}.`;
}

/** What a case leads to, in words. */
export function judgementSentence(judgement: Judgement): string {
  const [outcome] = judgement.outcomes;
  if (outcome) return outcomeSentence(outcome);
  if (judgement.reason) return `Not assessed: ${judgement.reason}.`;
  return judgement.verdict === 'dormant'
    ? 'Harmless by itself, but it puts a safeguard out of action.'
    : 'No harm within seven days though nobody comes.';
}

/** A case by name: what befalls what, and when it matters in which state. */
export function caseTitle(c: Pick<FaultCase, 'title' | 'thing' | 'state'>): string {
  const state = c.state === 'normal' || c.thing.kind === 'state' ? '' : ` during ${c.state.replace('-', ' ')}`;
  return c.thing.kind === 'state' ? c.title : `${c.thing.name}: ${lower(c.title)}${state}`;
}

function lower(text: string): string {
  return /^[A-Z]{2}/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);
}
