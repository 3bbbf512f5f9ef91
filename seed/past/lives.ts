import { rosterAt } from '#core/alarms/roster';
import { calledNextMs, isRepeat } from '#core/alarms/steps';
import { type Member, type Telling, type ToTell, tellFirst, tellNext } from '#core/alarms/to-tell';
import type { Facility } from '#core/facility/facility';
import { randomOf } from './random';
import type { Raised } from './raised';

/** s from a call being made to the mail server taking it. */
const TAKEN_AFTER_MS = 3000;

/** Somebody was told of an alarm. */
export interface PastCall {
  step: number;
  /** Key of the person. */
  person: string;
  why: ToTell['why'];
  madeMs: number;
  takenMs: number;
}

/** Somebody said that they saw it. */
export interface Seeing {
  atMs: number;
  person: string;
  /** What it was seen from. */
  from: string;
  note: string | null;
}

/** What became of one time that an alarm was raised. */
export interface Life {
  raised: Raised;
  calls: PastCall[];
  /** The step it was raised at: not the first when nobody was on. */
  step: number;
  /** The steps that were reached after the first, and when. */
  escalated: { atMs: number; step: number; told: number; repeated?: true }[];
  acknowledged: Seeing | null;
  /** When the next step is due; null when there is none. */
  nextStepMs: number | null;
}

/** What is told of an alarm in particular, and not left to chance. */
export type Told = (raised: Raised) => Seeing | 'nobody' | null;

/**
 * What became of each time an alarm was raised: who was called by the rota of that hour, who acknowledged and when, and
 * whether leads had to be called.
 *
 * @param told      what is told of one in particular; null for the usual
 * @param untilMs   now: what would follow has not happened yet
 */
export function livesOf(facility: Facility, all: readonly Raised[], told: Told, untilMs: number): Life[] {
  return all.map((raised) => lifeOf(facility, raised, told, untilMs));
}

function lifeOf(facility: Facility, raised: Raised, told: Told, untilMs: number): Life {
  const { system, alarm, raisedMs } = raised;
  const definition = facility.systems.find(({ key }) => key === system)?.alarms.find(({ key }) => key === alarm);
  if (!definition) throw new Error(`${system} has no alarm ${alarm}`);
  const members = facility.people.map(({ key, role }): Member => ({ account: key, role, person: key }));
  const first = tellFirst(definition.answeredBy, rosterAt(facility, [], members, raisedMs));
  const calls = callsOf(first, raisedMs);
  const particular = told(raised);
  const usual = particular === null ? usualSeeing(raised, calls) : null;
  const seen = particular === 'nobody' ? null : (particular ?? usual);
  const acknowledged = seen && seen.atMs <= untilMs ? seen : null;
  const escalated: Life['escalated'] =
    first.step > 1 ? [{ atMs: raisedMs, step: first.step, told: first.whom.length }] : [];
  const dueMs = ({ step }: Telling, atMs: number) => {
    if (definition.answeredBy === 'nobody') return null;
    const times = { calledMs: raisedMs, atMs, secondMin: definition.escalateAfterMin };
    return calledNextMs(facility.site, step, times);
  };
  let nextMs = dueMs(first, raisedMs);
  for (let step = first.step; nextMs !== null && nextMs <= (acknowledged?.atMs ?? untilMs); ) {
    const telling = tellNext(step, rosterAt(facility, [], members, nextMs));
    const repeated = isRepeat(facility.site, telling.step);
    if (repeated && raised.returned !== null && raised.returned.knownMs <= nextMs) {
      nextMs = null;
      break;
    }
    calls.push(...callsOf(telling, nextMs));
    const told = telling.whom.length;
    escalated.push({ atMs: nextMs, step: telling.step, told, ...(repeated ? { repeated } : {}) });
    step = telling.step;
    nextMs = dueMs(telling, nextMs);
  }
  return {
    raised,
    calls,
    step: first.step,
    escalated,
    acknowledged,
    nextStepMs: acknowledged === null ? nextMs : null,
  };
}

function callsOf({ step, whom }: Telling, madeMs: number): PastCall[] {
  return whom.map(({ account: person, why }) => ({ step, person, why, madeMs, takenMs: madeMs + TAKEN_AFTER_MS }));
}

/** Whoever is in the house has seen it within minutes; whoever sleeps needs longer. Common practice, no source. */
function usualSeeing({ system, alarm, raisedMs }: Raised, calls: readonly PastCall[]): Seeing | null {
  if (calls.length === 0) return null;
  const random = randomOf(system, alarm, String(raisedMs));
  const { person, why } = random.one(calls);
  const minutes = why === 'on-site' ? random.between(2, 9) : random.between(4, 13);
  const atMs = raisedMs + Math.round(minutes * 60) * 1000;
  return { atMs, person, from: why === 'on-site' ? 'Alarms, on a phone' : 'Link of a call, on a phone', note: null };
}
