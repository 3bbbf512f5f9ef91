import { describe, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { contextOf } from '#core/review/context';
import { judge } from '#core/review/judge';
import type { FaultCase } from '#core/review/result';
import { emptyCache, type ReviewCache } from '#core/review/review-cache';
import { subjectsOf } from '#core/review/subjects';
import { airBlower, cutOut, heater, plan, thermostat } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { alarm, REVIEWED_ON, safeguard, sensor, stock, system, tank } from '../../_support/build-system';

/** A tank with a heater that overheats it unless its cut-out acts, an alarm, and air. */
function site(change: (own: System) => System = (own) => own): Facility {
  const own = system({
    tanks: [tank({ volumeL: 500, siphonBreakMm: undefined, siphonSafeguard: undefined })],
    equipment: [
      heater({
        tank: 'display',
        ratedW: 400,
        plan: plan({
          cutOuts: [cutOut({ above: 28, safeguard: 'cut-out' })],
          regulation: thermostat({ sensors: ['display-temperature'] }),
        }),
      }),
      airBlower(),
    ],
    sensors: [sensor({ key: 'display-temperature', tank: 'display' })],
    stock: [stock()],
    alarms: [alarm({ on: { kind: 'sensor', sensor: 'display-temperature', above: 27 } })],
    safeguards: [...system().safeguards.filter(({ key }) => key !== 'cut-out'), safeguard({ key: 'cut-out' })],
    states: [],
  });
  return facility({ systems: [change(own)], rounds: [] });
}

function hotter(own: System): System {
  return {
    ...own,
    equipment: own.equipment.map((e) =>
      e.type === 'heater' ? { ...e, ratedW: { value: 900, origin: 'entered' } } : e,
    ),
  };
}

function untested(own: System): System {
  return { ...own, safeguards: own.safeguards.map((one) => ({ ...one, tests: [] })) };
}

function slower(own: System): System {
  return { ...own, equipment: own.equipment.map((e) => ({ ...e, repairMin: { value: 600, origin: 'entered' } })) };
}

function later(own: System): System {
  return {
    ...own,
    alarms: own.alarms.map((one) => ({ ...one, delayS: one.delayS + 1800 })),
  };
}

function renamed(own: System): System {
  return { ...own, name: 'Another name', tanks: own.tanks.map((one) => ({ ...one, name: `${one.name} two` })) };
}

/** Fault cases that lean on what is changed: on the heater, its cut-out, the alarm, the people. */
const FAULTS = ['heater-on', 'control-probe-out', 'utility-fails', 'air-stops'];

function judgedWith(of: Facility, cache: ReviewCache | null = null): FaultCase[] {
  const [own] = of.systems;
  if (!own) throw new Error('a site without a system');
  const context = contextOf(of, own, REVIEWED_ON, null, cache);
  return subjectsOf(of, own)
    .filter(({ fault }) => FAULTS.includes(fault.id))
    .map((subject) => judge(context, subject));
}

function unpeopled(of: Facility): Facility {
  return { ...of, shifts: [], people: [] };
}

describe('a review that is told what the water did before', () => {
  test('comes out as one that is told nothing, after any edit and after it is taken back', () => {
    const cache = emptyCache();
    const edits = [site(), site(untested), site(slower), site(renamed), unpeopled(site()), site(later), site(hotter)];
    for (const edited of [...edits, site()]) expect(judgedWith(edited, cache)).toEqual(judgedWith(edited));
  });

  test('makes no run anew for a change of people, of times of work or of names', () => {
    const cache = emptyCache();
    const before = judgedWith(site(), cache);
    const runs = new Set(cache.courses.values());
    expect(runs.size).toBeGreaterThan(3);
    for (const edited of [site(slower), unpeopled(site())]) {
      expect(judgedWith(edited, cache)).not.toEqual(before);
      expect([...cache.courses.values()].filter((courses) => !runs.has(courses))).toEqual([]);
    }
    expect(judgedWith(site(renamed), cache).length).toBe(before.length);
    expect([...cache.courses.values()].filter((courses) => !runs.has(courses))).toEqual([]);
  });

  test('makes only runs of the other column anew when a test is struck out, and every run when the heater is another', () => {
    const cache = emptyCache();
    judgedWith(site(), cache);
    const runs = [...cache.courses.values()];
    judgedWith(site(untested), cache);
    expect(runs.filter((courses) => ![...cache.courses.values()].includes(courses))).toEqual([]);
    expect(cache.courses.size).toBeGreaterThan(runs.length);
    judgedWith(site(hotter), cache);
    expect([...cache.courses.values()].filter((courses) => runs.includes(courses))).toEqual([]);
  });
});
