import type { HarmClass, Judgement } from '#core/review/result';
import type { CaseTrajectory, Moment } from '#core/review/trajectory';
import { harmSaid, noticeSaid, type Speech } from '../words/said';

/** A moment of a fault case in words. */
export interface CaseMoment {
  kind: Moment['kind'];
  /** s after the fault begins; Infinity for what never comes */
  atS: number;
  /** One or two words, for a plot. */
  word: string;
  /** What happens, for the log. */
  says: string;
}

const HARM_WORDS: Record<HarmClass, string> = {
  animals: 'harm to animals',
  floor: 'water on the floor',
  equipment: 'pump dry',
};
const ORDER: readonly Moment['kind'][] = ['begins', 'event', 'noticed', 'last-chance', 'harm', 'put-right'];

/**
 * The moments of a fault case, from its worst hour, in order.
 * @param title what befalls
 */
export function caseMoments(
  speech: Speech,
  judgement: Judgement,
  trajectory: CaseTrajectory,
  title: string,
): CaseMoment[] {
  const { onsetHour, moments } = trajectory;
  const [gravest] = judgement.outcomes;
  const found: CaseMoment[] = [{ kind: 'begins', atS: 0, word: 'begins', says: title }];
  const add = (kind: Moment['kind'], atS: number | null | undefined, word: string, says: string, never?: string) => {
    if (atS !== null && atS !== undefined) found.push({ kind, atS, word, says });
    else if (never !== undefined) found.push({ kind, atS: Number.POSITIVE_INFINITY, word, says: never });
  };
  if (gravest) {
    add(
      'noticed',
      gravest.noticeS[onsetHour],
      'noticed',
      `Noticed ${noticeSaid(speech, gravest.noticeBy[onsetHour])}`,
      'Nobody notices it within seven days',
    );
    add(
      'last-chance',
      gravest.lastChanceS[onsetHour],
      'last chance',
      'Last chance: put right after this, it no longer avoids the harm',
    );
    add(
      'put-right',
      gravest.putRightS[onsetHour],
      'put right',
      'Put right, if the rota holds: noticed, answered, on site, repaired',
      'Nobody ever has it put right',
    );
  }
  for (const outcome of judgement.outcomes)
    add('harm', outcome.harmS[onsetHour], HARM_WORDS[outcome.harm.class], harmSaid(speech, outcome.harm));
  for (const event of moments) if (event.kind === 'event') add('event', event.atS, '', eventSaid(speech, event.label));
  return found.sort((a, b) => compare(a.atS, b.atS) || ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
}

/** An event of the model with names instead of keys. */
function eventSaid({ names }: Speech, label: string): string {
  const [key, what] = label.split(/: (.*)/s);
  return key !== undefined && what !== undefined ? `${names.equipment(key)}: ${what}` : label;
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}
