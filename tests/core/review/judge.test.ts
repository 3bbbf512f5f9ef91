import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { FAULTS } from '#core/faults/catalogue';
import { statesOf, subjectsOf } from '#core/review/subjects';
import { describe, expect, test } from 'vitest';
import {
  airBlower,
  circulationPump,
  heater,
  plan,
  returnPump,
  skimmer,
  thermostat,
} from '../../_support/build-equipment';
import { facility, person, room } from '../../_support/build-facility';
import { system, tank } from '../../_support/build-system';
import { entered, type Given, unknown } from '../../_support/given';
import { withSystem } from '../../_support/with-part';
import { judged, judging } from './trying';

const strong = (given: Parameters<typeof heater>[0] = {}) =>
  heater({ ratedW: 600, plan: plan({ regulation: thermostat() }), ...given });
const kept = (given: Given<System> = {}): Facility =>
  withSystem({ equipment: [strong(), returnPump(), airBlower()], states: [], ...given });

describe('a case is not assessed', () => {
  test('where a figure without defensible default is unknown, and says which', () => {
    const c = judged(kept({ equipment: [strong({ ratedW: unknown() }), returnPump(), airBlower()] }), 'heater-on');
    expect([c.claimed.verdict, c.tested.verdict]).toEqual(['not-assessed', 'not-assessed']);
    expect(c.claimed.reason).toBe('not known: power of Heater 1');
    expect(c.claimed.outcomes).toEqual([]);
  });

  test('where the plan does harm with nothing wrong, and says what by the name of its tank', () => {
    const hot = strong({ plan: plan({ regulation: thermostat({ lowC: 30, highC: 30.5 }) }) });
    const c = judged(kept({ equipment: [hot, returnPump(), airBlower()] }), 'return-stops');
    expect(c.claimed.verdict).toBe('not-assessed');
    expect(c.claimed.reason).toBe('the plan as written does harm without any fault (Display above 29 °C for 2 h)');
  });

  test('where healthy water stands beyond a limit day after day, though the limit bears more days than are run', () => {
    const sharp = kept({ feedGPerDay: entered(20), ph: entered(9.4) });
    expect(judged(sharp, 'heater-off').claimed).toMatchObject({
      verdict: 'not-assessed',
      reason: expect.stringMatching(/does harm without any fault \(Display above 0\.035 mg\/L of un-ionised ammonia/),
    });
    expect(judged(kept({ feedGPerDay: entered(20), ph: entered(8.2) }), 'heater-off').claimed.reason).toBeUndefined();
  });

  test('but is where a default stands in for what nobody entered', () => {
    const c = judged(kept({ equipment: [strong({ repairMin: unknown() }), returnPump(), airBlower()] }), 'heater-on');
    expect(c.claimed.verdict).toBe('covered');
  });
});

describe('a fault that harms nothing', () => {
  test('is dormant where it puts safeguards out of action, and names them', () => {
    const c = judged(facility(), 'gateway-silent', 'gateway-1');
    expect(c.claimed.verdict).toBe('dormant');
    expect(c.claimed.disables).toContain('Too warm');
    expect(c.claimed.disables).not.toContain('Gateway silent');
  });

  test('holds where there is nothing to put out of action, or nobody who would answer it', () => {
    expect(judged(kept({ alarms: [] }), 'gateway-silent', 'gateway-1').claimed.verdict).toBe('holds');
    const deaf = system().alarms.map((one) => ({ ...one, answeredBy: 'nobody' as const }));
    expect(judged(kept({ alarms: deaf }), 'gateway-silent', 'gateway-1').claimed.verdict).toBe('holds');
  });

  test('is dormant where it blinds the interlock that another fault would need', () => {
    const lock = { when: { kind: 'sensor', sensor: 'sump-level', above: 20 }, then: 'off', by: 'controller' } as const;
    const guarded = skimmer({ plan: plan({ interlocks: [{ ...lock, safeguard: 'skimmer-interlock' }] }) });
    const site = withSystem({
      alarms: [],
      equipment: system().equipment.map((e) => (e.key === 'skimmer' ? guarded : e)),
    });
    expect(judged(site, 'top-off-on').claimed).toMatchObject({
      verdict: 'dormant',
      disables: ['Skimmer off without return'],
    });
  });
});

describe('a case is unsure', () => {
  const ranged = (low: number, high: number) =>
    kept({ equipment: [strong({ ratedW: entered(600, { low, high }) }), returnPump(), airBlower()] });

  test('where the plausible range of a figure, on its bad side, would make it graver', () => {
    expect(judged(ranged(590, 610), 'heater-on')).toMatchObject({ unsure: false, claimed: { verdict: 'covered' } });
    expect(judged(ranged(590, 6000), 'heater-on')).toMatchObject({ unsure: true, claimed: { verdict: 'covered' } });
  });

  test('but not by the good end of a range', () => {
    expect(judged(ranged(100, 610), 'heater-on').unsure).toBe(false);
  });

  test('where the way to the site may be so long that nobody is there in time', () => {
    const far = (high: number) => ({
      ...kept(),
      people: facility().people.map((one) => person({ ...one, travelMin: entered(30, { low: 20, high }) })),
    });
    expect(judged(far(45), 'heater-on').unsure).toBe(false);
    expect(judged(far(1200), 'heater-on').unsure).toBe(true);
  });

  test('but not by a side on which the water does better: what cools is not saved by a warm room', () => {
    const swing = (low: number, high: number) => ({
      // Without feed: warm water has more of its ammonia un-ionised, which is no matter of the heater.
      ...kept({ equipment: [strong(), returnPump(), circulationPump(), airBlower()], feedGPerDay: entered(0) }),
      rooms: [room({ temperatureC: entered(19, { low, high }) })],
    });
    expect(judged(swing(18, 26), 'return-pumps-nothing')).toMatchObject({
      unsure: false,
      claimed: { verdict: 'covered' },
    });
    expect(judged(swing(-30, 20), 'return-pumps-nothing').unsure).toBe(true);
  });

  test('but never where it is as grave as can be already', () => {
    const site = { ...ranged(590, 6000), rounds: [] };
    const deaf = { ...site, systems: site.systems.map((one) => ({ ...one, alarms: [] })) };
    expect(judged(deaf, 'heater-on')).toMatchObject({ unsure: false, claimed: { verdict: 'no-warning' } });
  });
});

test('a result is marked optimistic where a tank with animals stands still, and only there', () => {
  const stirred = kept({ equipment: [strong(), returnPump(), circulationPump()] });
  const still = kept({ equipment: [strong(), returnPump()] });
  expect(judged(stirred, 'return-stops').optimistic).toBe(false);
  expect(judged(still, 'return-stops').optimistic).toBe(true);
  expect(judged(still, 'heater-on').optimistic).toBe(false);
});

describe('fault cases', () => {
  const ids = (site: Facility) => {
    const { facility: of, system: one } = judging(site);
    return subjectsOf(of, one).map(({ fault, thing, state }) => `${fault.id}:${thing.key}:${state}`);
  };

  test('are told apart by fault, thing and state', () => {
    expect(new Set(ids(facility())).size).toBe(ids(facility()).length);
    expect(ids(facility())).toEqual(
      expect.arrayContaining(['heater-on:heater-1:normal', 'return-stops:return-pump:feeding']),
    );
    expect(judged(kept(), 'heater-on').id).toBe('heater-on:heater-1:normal');
  });

  test('are the same whatever the order and the names of things', () => {
    const base = facility();
    const [one] = base.systems;
    const turned = facility({
      circuits: base.circuits.toReversed(),
      monitors: base.monitors.toReversed(),
      systems: one
        ? [
            {
              ...one,
              equipment: one.equipment.map((e) => ({ ...e, name: `${e.name}!` })).toReversed(),
              sensors: one.sensors.toReversed(),
              tanks: one.tanks.toReversed(),
            },
          ]
        : [],
    });
    expect(ids(turned).toSorted()).toEqual(ids(base).toSorted());
  });

  test('come in a state only where it is in use and asks something of some equipment, or takes water out', () => {
    const states = (given: Given<System>) => statesOf(system(given));
    expect(states({})).toEqual(['normal', 'feeding', 'water-change']);
    expect(states({ states: [] })).toEqual(['normal']);
    const [feeding] = system().states;
    expect(states({ states: feeding ? [feeding] : [], equipment: [returnPump({ plan: plan() })] })).toEqual(['normal']);
    const draws = { name: 'backwash', endsBy: 'person', drawnL: entered(20) } as const;
    expect(states({ states: [draws], equipment: [returnPump({ plan: plan() })] })).toEqual(['normal', 'backwash']);
  });

  test('of normal running come first, since the others are measured against them', () => {
    const of = ids(facility());
    const firstOther = of.findIndex((id) => !id.endsWith(':normal'));
    expect(of.slice(firstOther).some((id) => id.endsWith(':normal'))).toBe(false);
  });

  test('befall only what is there', () => {
    const faults = new Set(
      ids(kept({ tanks: [tank()], equipment: [heater({ tank: 'display' })] })).map((id) => id.split(':')[0]),
    );
    for (const id of ['return-stops', 'top-off-on', 'overflow-blocked', 'air-stops', 'chiller-on', 'rcd-trips'])
      expect(faults.has(id)).toBe(false);
    expect(faults).toContain('heater-on');
    expect(FAULTS.length).toBeGreaterThan(20);
  });
});

test('somebody who comes later never gains time to spare, at any hour of the week', () => {
  const spare = (travelMin: number) => {
    const people = facility().people.map((one) => person({ ...one, travelMin }));
    return judged({ ...kept(), people }, 'heater-on').claimed.outcomes[0]?.spareS ?? [];
  };
  const [near, far, farther] = [spare(10), spare(60), spare(400)];
  expect(near).toHaveLength(168);
  for (const [h, s] of near.entries()) {
    expect(far[h] ?? Number.NEGATIVE_INFINITY).toBeLessThanOrEqual(s ?? Number.NaN);
    expect(farther[h] ?? Number.NEGATIVE_INFINITY).toBeLessThanOrEqual(far[h] ?? Number.NaN);
  }
  // At night Sam comes from home: 50 minutes more of a way are 50 minutes less to spare. By day Robin is there already.
  expect((near[2] ?? 0) - (far[2] ?? 0)).toBe(3000);
  expect(near[12]).toBe(far[12]);
});
