import { describe, expect, test } from 'vitest';
import { type AnsweredAlarm, answersOf, percentile } from '#core/alarms/answers';
import { NOTHING_MEASURED, type PeopleFacts, withMeasured } from '#core/alarms/measured';
import { isTestDue, type Reached, reachState } from '#core/alarms/test-calls';
import { isTested } from '#core/plans/credit';
import { entered } from '../../_support/given';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { alarm } from '../../_support/build-system';

const MIN = 60_000;
const DAY = 86_400_000;
const answered = (minutes: number, more: Partial<AnsweredAlarm> = {}): AnsweredAlarm => ({
  isOnSite: true,
  raisedMs: 0,
  acknowledgedMs: minutes * MIN,
  returnedMs: null,
  ...more,
});

describe('how soon people answer', () => {
  // Nearest rank: the smallest value that at least that share do not exceed (NIST/SEMATECH e-Handbook, 7.2.6.2, from memory).
  test.each([
    [[15, 20, 35, 40, 50], 0.05, 15],
    [[15, 20, 35, 40, 50], 0.3, 20],
    [[15, 20, 35, 40, 50], 0.4, 20],
    [[15, 20, 35, 40, 50], 0.5, 35],
    [[15, 20, 35, 40, 50], 1, 50],
  ])('of %j at %d is %d', (values, share, is) => {
    expect(percentile(values, share)).toBe(is);
  });

  test('is known from ten cases on, with what the slow tenth took', () => {
    const ten = Array.from({ length: 10 }, (_, at) => answered(at + 1));
    expect(answersOf(ten.slice(1), DAY).onSite).toBeNull();
    expect(answersOf(ten, DAY)).toEqual({
      onSite: { cases: 10, unanswered: 0, medianMin: 5, lowMin: 1, highMin: 9 },
      onCall: null,
    });
  });

  test('counts what nobody ever acknowledged as a day, and leaves out what went back to normal before', () => {
    const nine = Array.from({ length: 9 }, () => answered(3));
    const gone = answered(90, { returnedMs: 2 * MIN });
    const never = answered(0, { acknowledgedMs: null });
    expect(answersOf([...nine, gone], 2 * DAY).onSite).toBeNull();
    expect(answersOf([...nine, never], 2 * DAY).onSite).toMatchObject({
      cases: 10,
      unanswered: 1,
      medianMin: 3,
      highMin: 3,
    });
    expect(answersOf([...nine, never], DAY / 2).onSite).toBeNull();
  });
});

describe('a review', () => {
  const proof = { key: 'way', name: 'Way', kind: 'alarm' as const, testEveryDays: 30, tests: [] };
  const described = (tests: typeof proof.tests = [], names = ['robin']) =>
    smallFacility({
      ...smallSystem(),
      safeguards: [{ ...proof, tests }],
      alarms: names.map((one) => ({ ...alarm({ safeguard: 'way' }), key: `alarm-${one}`, answeredBy: [one] })),
    });
  const facts = (more: Partial<PeopleFacts>): PeopleFacts => ({ ...NOTHING_MEASURED, ...more });
  const way = (facility: ReturnType<typeof described>, more: Partial<PeopleFacts>) => {
    const found = withMeasured(facility, facts(more)).systems[0]?.safeguards[0];
    if (!found) throw new Error('no safeguard');
    return found;
  };
  const robin = { person: 'robin', on: '2026-03-01' };

  test('counts the way of an alarm as tested while somebody who answers it was reached within its interval', () => {
    expect(isTested(way(described(), {}), '2026-03-02')).toBe(false);
    expect(isTested(way(described(), { reached: [robin] }), '2026-03-31')).toBe(true);
    expect(isTested(way(described(), { reached: [robin] }), '2026-04-01')).toBe(false);
    expect(isTested(way(described(), { reached: [{ ...robin, person: 'kim' }] }), '2026-03-02')).toBe(false);
  });

  test('counts it only when that is so of every alarm that leans on it', () => {
    const both = described([], ['robin', 'kim']);
    expect(isTested(way(both, { reached: [robin] }), '2026-03-02')).toBe(false);
    expect(isTested(way(both, { reached: [robin, { person: 'kim', on: '2026-02-01' }] }), '2026-03-02')).toBe(true);
    expect(isTested(way(both, { reached: [robin, { person: 'kim', on: '2026-01-01' }] }), '2026-03-02')).toBe(false);
  });

  test('lets no call outdo a test that failed', () => {
    const failed = described([{ on: '2026-02-01', result: 'failed' }] as never);
    expect(isTested(way(failed, { reached: [robin] }), '2026-03-02')).toBe(false);
  });

  test('takes measured times for stated ones, and says of how many cases', () => {
    const answers = { cases: 12, unanswered: 1, medianMin: 4, lowMin: 2, highMin: 40 };
    const facility = described();
    facility.site.answerOnSiteMin = entered(5);
    facility.site.answerOnCallMin = entered(15);
    const { site } = withMeasured(facility, facts({ onSite: answers, onCall: answers }));
    expect(site.answerOnSiteMin).toMatchObject({ value: 4, low: 2, high: 40, origin: 'measured' });
    expect(site.answerOnSiteMin?.source).toContain('12 alarms');
    expect(site.answerOnCallMin).toMatchObject({ value: 14, low: 12, high: 50, origin: 'measured' });
    expect(withMeasured(facility, NOTHING_MEASURED)).toEqual(facility);
  });
});

describe('a test call', () => {
  const never: Reached = { test: null, answeredMs: null, alarmMs: null };
  const noon = { nowMs: 100 * DAY, time: '12:00', eachDays: 28 };

  test.each<[string, Partial<Reached>, string, boolean]>([
    ['who was never reached', {}, 'never', true],
    ['who answered within the interval', { answeredMs: 72 * DAY }, 'reached', false],
    ['who answered before it', { answeredMs: 72 * DAY - 1 }, 'long-ago', true],
    ['who acknowledged an alarm within it', { answeredMs: 10 * DAY, alarmMs: 90 * DAY }, 'reached', false],
    ['who is being asked', { test: { madeMs: 99.5 * DAY, answeredMs: null } }, 'asked', false],
    ['who missed the last one', { test: { madeMs: 99 * DAY, answeredMs: null }, answeredMs: 90 * DAY }, 'missed', true],
    ['who acknowledged since', { test: { madeMs: 90 * DAY, answeredMs: null }, alarmMs: 91 * DAY }, 'reached', false],
  ])('to somebody %s', (_, more, state, due) => {
    const reached = { ...never, ...more };
    expect(reachState(reached, noon.nowMs, 28)).toBe(state);
    expect(isTestDue(reached, noon)).toBe(due);
  });

  test('is made in waking hours alone', () => {
    const at = (time: string, quiet?: { from: string; to: string }) => isTestDue(never, { ...noon, time, quiet });
    expect(['08:59', '09:00', '17:59', '18:00', '03:00'].map((time) => at(time))).toEqual([
      false,
      true,
      true,
      false,
      false,
    ]);
    expect(at('12:00', { from: '06:00', to: '14:00' })).toBe(false);
  });
});
