import { alarmDesigns } from '#core/review/alarm-design';
import { judge } from '#core/review/judge';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { system } from '../../_support/build-system';
import { judging, subject } from './trying';

/** The base site, with some cases judged. */
function judged(of = facility(), faults = ['return-stops', 'room-hot', 'utility-fails']) {
  const context = judging(of);
  const cases = faults.map((fault) => judge(context, subject(context, fault)));
  const designs = alarmDesigns(context);
  const designOf = (key: string) => designs.find(({ alarm }) => alarm === key);
  return { cases, designOf };
}

describe('what the review makes of an alarm', () => {
  const { cases, designOf } = judged();

  test('leaves as much time as lies between it and the last chance of the case it names', () => {
    const design = designOf('return-lost');
    const found = cases.find(({ id }) => id === design?.case);
    const [outcome] = found?.claimed.outcomes ?? [];
    const seen = found?.alarms?.find(({ alarm }) => alarm === 'return-lost');
    expect(seen?.isFirst).toBe(true);
    // It is raised after five minutes, and first of all.
    expect(seen?.afterS).toBe(300);
    expect(outcome?.lastChanceS.some((last) => Math.round((last ?? 0) - 300) === design?.availableS)).toBe(true);
    expect(design?.consequence).toBe('animals');
  });

  test('says that a case needs somebody at the worst hour: whoever is on call takes an hour, and the work', () => {
    const needed = designOf('return-lost')?.neededS ?? 0;
    expect(needed).toBeGreaterThanOrEqual(3600);
  });

  test('is nothing for what the model cannot raise, and says so', () => {
    expect(designOf('gateway-silent')).toMatchObject({
      isCarried: false,
      raisedIn: 0,
      consequence: 'none',
      case: null,
    });
  });

  test('finds a limit within the healthy swing, and one outside of it not', () => {
    const tight = system().alarms.map((one) =>
      one.key === 'too-cold' ? { ...one, on: { ...one.on, below: 26 } } : one,
    ) as ReturnType<typeof system>['alarms'];
    const within = (of: ReturnType<typeof judged>, key: string) => of.designOf(key)?.limits.map((one) => one.isWithin);
    expect(within(judged(facility({ systems: [system({ alarms: tight })] }), []), 'too-cold')).toEqual([true]);
    expect(within(judged(facility(), []), 'too-cold')).toEqual([false]);
  });

  test('asks for an earlier limit when it takes longer to come, never for a later one', () => {
    const slow = facility().people.map((one) => ({ ...one, travelMin: { value: 600, origin: 'entered' as const } }));
    const [soon, late] = [facility(), facility({ people: slow })].map(
      (of) => judged(of, ['room-hot']).designOf('too-warm')?.limits[0]?.proposed ?? null,
    );
    expect(soon).not.toBeNull();
    expect(late).not.toBeNull();
    expect(late ?? 0).toBeLessThan(soon ?? 0);
  });
});
