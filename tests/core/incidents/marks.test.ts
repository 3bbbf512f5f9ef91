import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MARKS } from '#core/incidents/incident';
import { contradictionsIn, intervalsOf } from '#core/incidents/intervals';
import { type Mark, marksOf, type Proposal } from '#core/incidents/marks';
import { signingOf } from '#core/incidents/state';
import { at, entry, mark } from './build-entry';

const proposed = (name: Proposal['mark'], clock: string): Proposal => ({
  mark: name,
  atMs: at(clock),
  source: 'device',
  from: 'the record',
});

describe('the marks of an incident', () => {
  test('are proposed from the record, the earliest of each, and what somebody entered stands before it', () => {
    const record = [proposed('first-alarm', '02:10'), proposed('first-alarm', '02:05'), proposed('told', '02:06')];
    const marks = marksOf([mark('told', '02:20')], record);
    expect(marks).toMatchObject([
      { mark: 'first-alarm', atMs: at('02:05'), entered: false, from: 'the record' },
      { mark: 'told', atMs: at('02:20'), entered: true },
    ]);
  });

  test('of which the one entered last counts, though it tells of an earlier time', () => {
    const first = mark('on-scene', '03:00');
    const later = { ...mark('on-scene', '02:50'), recordedMs: at('09:00') };
    expect(marksOf([later, first], [])[0]?.atMs).toBe(at('02:50'));
  });

  test('take the first step that was pressed, and not one that was not done, for hands on', () => {
    const steps = [
      entry('step', '02:30', { step: 'isolate', notDone: 'wet' }),
      entry('step', '02:31', { step: 'people-safe' }),
      entry('step', '02:33', { step: 'air-on' }),
    ];
    expect(marksOf(steps, [])).toMatchObject([{ mark: 'hands-on', atMs: at('02:33') }]);
  });
});

describe('the times between them', () => {
  // A worked night: the fault began between 01:40 and 02:00, the alarm came at 02:05, was told at 02:06, acknowledged at 02:16,
  // somebody was there at 02:50, and it was put right at 03:20. The minutes are counted by hand.
  const night = marksOf(
    [mark('fault-began', '01:40', '02:00'), mark('on-scene', '02:50'), mark('put-right', '03:20')],
    [proposed('first-alarm', '02:05'), proposed('told', '02:06'), proposed('acknowledged', '02:16')],
  );

  test('are counted from the fault, as a range, and from the one before', () => {
    const minutes = intervalsOf(night).map(({ name, leastS, mostS, sinceS }) => [
      name,
      leastS / 60,
      mostS / 60,
      sinceS === null ? null : sinceS / 60,
    ]);
    expect(minutes).toEqual([
      ['noticed', 5, 25, null],
      ['told', 6, 26, 1],
      ['acknowledged', 16, 36, 10],
      ['on-scene', 50, 70, 34],
      ['put-right', 80, 100, 30],
    ]);
    expect(contradictionsIn(night)).toEqual([]);
  });

  test('say that it was acknowledged before anybody was told', () => {
    const marks = marksOf([mark('told', '02:20'), mark('acknowledged', '02:16')], []);
    expect(contradictionsIn(marks)).toEqual([{ earlier: 'told', later: 'acknowledged', byS: 240 }]);
  });

  test('without an alarm begin with whatever a person did first', () => {
    const marks = marksOf([mark('fault-began', '01:00'), mark('on-scene', '07:00')], []);
    expect(intervalsOf(marks)).toMatchObject([
      { name: 'noticed', to: 'on-scene', mostS: 21_600 },
      { name: 'on-scene', sinceS: 0 },
    ]);
  });

  test('contradict nothing when every mark comes in its order', () => {
    const times = fc.array(fc.nat(10_000), { minLength: MARKS.length, maxLength: MARKS.length });
    fc.assert(
      fc.property(times, (drawn) => {
        const sorted = [...drawn].sort((a, b) => a - b);
        const marks = MARKS.map((name, i): Mark => {
          const atMs = (sorted[i] ?? 0) * 1000;
          return { mark: name, atMs, latestMs: atMs, source: 'device', entered: true, from: null };
        });
        expect(contradictionsIn(marks)).toEqual([]);
        for (const { leastS, mostS } of intervalsOf(marks)) expect(Math.min(leastS, mostS)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('signing', () => {
  const line = entry('log', '02:00', { text: 'x', source: 'witness' });
  const sign = (by: string, as: 'lead' | 'manager' | 'sole-keeper', sha256 = 'a', covers = [line.id]) =>
    entry('signature', '12:00', { as, covers, sha256 }, { by });

  test('takes a lead and a manager, two accounts, over the very same entries', () => {
    const state = (...given: ReturnType<typeof sign>[]) => signingOf([line, ...given]).state;
    expect(state()).toBe('open');
    expect(state(sign('a', 'lead'))).toBe('under-investigation');
    expect(state(sign('a', 'lead'), sign('a', 'manager'))).toBe('under-investigation');
    expect(state(sign('a', 'lead'), sign('b', 'lead'))).toBe('under-investigation');
    expect(state(sign('a', 'lead', 'a'), sign('b', 'manager', 'b'))).toBe('under-investigation');
    expect(state(sign('a', 'manager'), sign('b', 'lead'))).toBe('signed');
    expect(state(sign('a', 'sole-keeper'))).toBe('signed');
  });

  test('marks what is written later as an addition', () => {
    const later = entry('log', '01:00', { text: 'remembered', source: 'witness' }, { recordedMs: at('20:00') });
    const { state, afterwards } = signingOf([line, sign('a', 'lead'), sign('b', 'manager'), later]);
    expect([state, [...afterwards]]).toEqual(['signed', [later.id]]);
  });

  test('a signature that was taken back does not count', () => {
    const [lead, manager] = [sign('a', 'lead'), sign('b', 'manager')];
    const back = entry('signature', '13:00', null, { supersedes: lead.id, reason: 'not read to the end', by: 'a' });
    expect(signingOf([line, lead, manager, back]).state).toBe('under-investigation');
  });
});
