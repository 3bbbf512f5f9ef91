import type { FaultCase, Outcome } from '#core/review/result';
import { contextOf } from '#core/review/context';
import { judge } from '#core/review/judge';
import { subjectsOf } from '#core/review/subjects';
import { describe, expect, test } from 'vitest';
import { DEMO_DATE } from '../../seed/demo';
import { demoSite, judgeOf, systemOf } from './demo-site';

const site = demoSite('harbour');
const judged = judgeOf(site);

const verdicts = (c: FaultCase) => [c.claimed.verdict, c.tested.verdict];
const animals = ({ outcomes }: FaultCase['claimed']): Outcome => {
  const found = outcomes.find(({ harm }) => harm.class === 'animals');
  if (!found) throw new Error('No animals are harmed');
  return found;
};
/** Least of a by-hour list, hours; null where it is never. */
const leastH = (list: readonly (number | null)[]): number | null => {
  const known = list.filter((s) => s !== null);
  return known.length === 0 ? null : Math.min(...known) / 3600;
};

describe('the great reef', () => {
  test.each([
    'heater-on:heater-sump:normal',
    'heater-on:heater-display:normal',
    'return-stops:return-1:normal',
    'circuit-trips:hall-b:normal',
    'top-off-on:top-off:normal',
    'skimmer-floods:skimmer:normal',
  ])('holds whatever single thing fails: %s', (id) => {
    expect(verdicts(judged('reef', id))).toEqual(['holds', 'holds']);
  });

  test('is ended by a hard timer when nobody ends the feeding pause', () => {
    const pause = judged('reef', 'feeding-never-ends:feeding:feeding');
    expect(verdicts(pause)).toEqual(['holds', 'holds']);
    expect(pause.claimed.acted).toContain('reef-pause-timer');
  });
});

describe('the northern shore', () => {
  test('warms beyond saving before the engineer has mended its only chiller, at whatever hour it stops', () => {
    const stopped = judged('northern-shore', 'chiller-off:chiller:normal');
    expect(verdicts(stopped)).toEqual(['too-late', 'too-late']);
    expect(leastH(animals(stopped.claimed).lastChanceS)).toBeGreaterThan(12);
  });
});

describe('the moon jellies', () => {
  test('are chilled beyond what they stand before anything says so', () => {
    const stuck = judged('moon-jellies', 'chiller-on:chiller:normal');
    expect(verdicts(stuck)).toEqual(['no-warning', 'no-warning']);
    expect(animals(stuck.claimed).harm.what).toBe('fall-24h');
  });
});

describe('the touch pool', () => {
  test('loses all its air with one RCD, and leaves about two hours: enough by day, not at night', () => {
    const tripped = judged('touch-pool', 'circuit-trips:pool:normal');
    expect(verdicts(tripped)).toEqual(['some-hours', 'some-hours']);
    const { harm, lastChanceS } = animals(tripped.claimed);
    expect(harm.what).toBe('oxygen');
    expect(leastH(lastChanceS)).toBeLessThan(3);
  });
});

describe('the ocean', () => {
  test.each(['ocean-a', 'ocean-b'])('is carried by either half when circuit %s trips', (circuit) => {
    expect(verdicts(judged('ocean', `circuit-trips:${circuit}:normal`))).toEqual(['holds', 'holds']);
  });

  test('keeps its water behind a level trip that was never tested, and loses it without', () => {
    const open = judged('ocean', 'waste-open:sand-filter:normal');
    expect(open.claimed.acted).toContain('ocean-level-trip');
    expect(open.claimed.outcomes.filter(({ harm }) => harm.class === 'animals')).toEqual([]);
    expect(open.tested.verdict).toBe('some-hours');
    expect(animals(open.tested).harm.what).toBe('level');
  });
});

describe('the flooded forest', () => {
  test('is lost to its one big heater only from Sunday evening to Monday morning, when nobody holds the telephone', () => {
    const welded = judged('flooded-forest', 'heater-on:heater:normal');
    expect(welded.claimed.verdict).toBe('some-hours');
    const late = animals(welded.claimed).spareS.flatMap((spare, hour) => (spare !== null && spare > 0 ? [] : [hour]));
    const sunday = 6 * 24;
    expect(late.length).toBeGreaterThan(0);
    expect(late.filter((hour) => hour < sunday + 15)).toEqual([]);
  });
});

describe('the mangrove creek', () => {
  test('is fresh by Monday when its mains top-off hangs on a Sunday evening, and the floor is wet at once', () => {
    const { claimed } = judged('mangrove', 'top-off-on:top-off:normal');
    expect(claimed.verdict).toBe('some-hours');
    expect(animals(claimed).harm).toMatchObject({ what: 'salinity', direction: 'below' });
    const floor = claimed.outcomes.find(({ harm }) => harm.class === 'floor');
    expect(leastH(floor?.harmS ?? [])).toBeLessThan(0.5);
  });
});

describe('the quarantine', () => {
  test('breathes from its battery under treatment when the boards are dead', () => {
    expect(verdicts(judged('quarantine', 'rcd-trips:rcd-back:treatment'))[0]).not.toBe('no-warning');
    const dark = judged('quarantine', 'utility-fails-no-generator:harbour:treatment');
    expect(leastH(animals(dark.claimed).lastChanceS)).toBeGreaterThan(8);
    expect(leastH(animals(dark.tested).lastChanceS)).toBeLessThan(5);
  });
});

describe('the coral nursery', () => {
  test('is in more danger from the hot sump on restart than from the cold', () => {
    const { lastChanceS, harmS } = animals(judged('coral-nursery', 'return-stops:return:normal').claimed);
    expect(leastH(lastChanceS)).toBeLessThan((leastH(harmS) ?? 0) - 2);
  });
});

describe('the live food', () => {
  test('is gone before the spare blower is plumbed in, whoever is there', () => {
    expect(verdicts(judged('live-food', 'air-stops:blower:normal'))).toEqual(['too-late', 'too-late']);
  });
});

describe('the seagrass lagoon', () => {
  test('is diluted while its skimmer overflows, for the float that should stop it is off', () => {
    const flood = judged('seagrass', 'skimmer-floods:skimmer:normal');
    expect(flood.claimed.verdict).toBe('some-hours');
    expect(animals(flood.claimed).harm).toMatchObject({ what: 'salinity', direction: 'below' });
    expect(flood.claimed.acted).not.toContain('lagoon-skimmer-float');
  });
});

describe('the rockpool', () => {
  test('needs nobody within three days in any single fault case but a hole in the tank itself', () => {
    const system = systemOf(site, 'rockpool');
    const context = contextOf(site, system, DEMO_DATE);
    const all = subjectsOf(site, system).map((subject) => judge(context, subject));
    expect(all.length).toBeGreaterThan(5);
    const harmful = all.filter(({ claimed: { verdict } }) => verdict !== 'holds' && verdict !== 'dormant');
    expect(harmful.map(({ fault, claimed }) => `${fault}: ${claimed.verdict}`).sort()).toEqual([
      'room-cold: covered',
      'tank-leaks: some-hours',
    ]);
    const cold = harmful.find(({ fault }) => fault === 'room-cold');
    expect(leastH((cold && animals(cold.claimed).harmS) ?? [])).toBeGreaterThan(72);
  });
});
