import { FAULTS } from '#core/faults/catalogue';
import type { FaultCase, Harm, HarmClass, Judgement, Outcome } from '#core/review/result';
import { verdictOf } from '#core/review/verdict';

/** One value for each hour of the week, Monday 00:00 first. */
export function everyHour<T>(of: (hour: number) => T): T[] {
  return Array.from({ length: 168 }, (_, h) => of(h));
}

type ByHour = number | null | (number | null)[];

/** What a test says of an outcome: a single value stands for all hours. */
export interface GivenOutcome {
  harm?: Harm;
  harmS?: ByHour;
  lastChanceS?: ByHour;
  noticeS?: ByHour;
  putRightS?: ByHour;
}

const spread = (given: ByHour): (number | null)[] => (Array.isArray(given) ? given : everyHour(() => given));

/** Display above 29 °C for two hours, ten hours after the beginning. */
export function harm(given: Partial<Harm> & { class?: HarmClass } = {}): Harm {
  return {
    class: 'animals',
    what: 'temperature',
    direction: 'above',
    tank: 'display',
    tankName: 'Display',
    limit: 29,
    forMin: 120,
    groups: ['Reef fish'],
    atS: 36_000,
    ...given,
  };
}

/** An outcome with its verdict: harm after ten hours, last chance after five, noticed at once, put right after one. */
export function outcome(given: GivenOutcome = {}): Outcome {
  const harmS = spread(given.harmS === undefined ? 36_000 : given.harmS);
  const lastChanceS = spread(given.lastChanceS === undefined ? 18_000 : given.lastChanceS);
  const noticeS = spread(given.noticeS === undefined ? 0 : given.noticeS);
  const putRightS = spread(given.putRightS === undefined ? 3600 : given.putRightS);
  const hours = {
    harmS,
    lastChanceS,
    noticeS,
    noticeBy: noticeS.map((s) => ({ by: s === null ? ('nobody' as const) : ('alarm' as const) })),
    putRightS,
    spareS: lastChanceS.map((last, h) => {
      const right = putRightS[h] ?? null;
      return last === null || right === null ? null : last - right;
    }),
  };
  return { harm: given.harm ?? harm(), ...hours, verdict: verdictOf(hours) };
}

/** A judgement of outcomes, gravest class first. */
export function judgement(outcomes: Outcome[], given: Partial<Judgement> = {}): Judgement {
  return { verdict: outcomes[0]?.verdict ?? 'holds', outcomes, acted: [], ...given };
}

/** `heater-on` of `heater-1` in normal running, the same in both columns unless a test says otherwise. */
export function faultCase(claimed: Judgement, given: Partial<FaultCase> = {}): FaultCase {
  const {
    fault = 'heater-on',
    thing = { kind: 'equipment', key: 'heater-1', name: 'Heater 1' },
    state = 'normal',
  } = given;
  const known = FAULTS.find(({ id }) => id === fault);
  return {
    id: `${fault}:${thing.key}:${state}`,
    fault,
    title: known?.title ?? fault,
    thing,
    state,
    claimed,
    tested: claimed,
    unsure: false,
    outsideValidity: false,
    optimistic: false,
    remedies: [...(known?.remedies ?? [])],
    ...given,
  };
}
