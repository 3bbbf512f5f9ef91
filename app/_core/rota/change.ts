import type { Instant } from '../time/zone';
import { type Lacking, lackingOn } from './lacking';
import { nobodyOn, type Span, spansWithout } from './nobody';
import { type RestWarning, restWarnings } from './rest';
import type { Competence, DutyException } from './rota';
import type { Rota } from './turns';

/** What can come of a change of duties that was asked for. */
export const CHANGE_EVENTS = ['agreed', 'declined', 'approved', 'refused', 'withdrawn', 'taken-back'] as const;
export type ChangeEvent = (typeof CHANGE_EVENTS)[number];

/** How it stands. */
export type ChangeState = 'asked' | ChangeEvent;

/** Leave is approved at once; a swap once whoever takes the turn has agreed. */
const NEXT: Readonly<Record<'leave' | 'swap', Partial<Record<ChangeState, readonly ChangeEvent[]>>>> = {
  leave: { asked: ['approved', 'refused', 'withdrawn'], approved: ['taken-back'] },
  swap: {
    asked: ['agreed', 'declined', 'refused', 'withdrawn'],
    agreed: ['approved', 'refused', 'withdrawn'],
    approved: ['taken-back'],
  },
};

/** How a change stands after what came of it, in order. */
export function changeState(events: readonly ChangeEvent[]): ChangeState {
  return events.at(-1) ?? 'asked';
}

/** What may come of a change as it stands. */
export function mayCome(kind: DutyException['kind'], state: ChangeState): readonly ChangeEvent[] {
  return NEXT[kind][state] ?? [];
}

/** What a change does to a rota, beyond what is so without it. */
export interface ChangeEffect {
  /** Hours that nobody answers any more. */
  nobody: Span[];
  /** Hours in which nobody who is on has a competence any more, somebody or nobody else being on. */
  lacking: Lacking[];
  /** Rules about rest that may be breached then and are not now, or worse than now. */
  rest: RestWarning[];
}

/** Days over which rest is looked at on either side of a change. */
const AROUND_MS = 8 * 86_400_000;

/**
 * What a change would do to a rota that has all the others already.
 * @param added the swaps or the leave it comes to
 * @param competences those of the site
 * @param from first moment that it touches
 * @param to the moment after the last
 * @throws RangeError when the site's zone is unknown
 */
export function effectOf(
  rota: Rota,
  added: readonly DutyException[],
  competences: readonly Competence[],
  from: Instant,
  to: Instant,
): ChangeEffect {
  const after: Rota = { ...rota, exceptions: [...rota.exceptions, ...added] };
  const before = new Map(lackingOn(rota, competences, from, to).map((one) => [one.competence, one.spans]));
  const lacking = lackingOn(after, competences, from, to).flatMap(({ competence, spans }) => {
    const more = spansWithout(spans, before.get(competence) ?? []);
    return more.length > 0 ? [{ competence, spans: more }] : [];
  });
  const known = restWarnings(rota, from - AROUND_MS, to + AROUND_MS);
  const rest = restWarnings(after, from - AROUND_MS, to + AROUND_MS).filter(
    (one) => !known.some((old) => old.rule === one.rule && old.person === one.person && !isWorse(one, old)),
  );
  return { nobody: spansWithout(nobodyOn(after, from, to), nobodyOn(rota, from, to)), lacking, rest };
}

/** Less rest, or too little of it more often; of everything else, more of it. */
function isWorse(one: RestWarning, old: RestWarning): boolean {
  const isRest = one.rule === 'daily-rest' || one.rule === 'weekly-rest';
  return isRest ? one.comesTo < old.comesTo || one.times > old.times : one.comesTo > old.comesTo;
}
