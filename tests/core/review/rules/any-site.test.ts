import type { Facility } from '#core/facility/facility';
import { contextOf } from '#core/review/context';
import { RULES } from '#core/review/rules/catalogue';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyFacility } from '../../../_support/any-facility';
import { REVIEWED_ON } from '../../../_support/build-system';

/** Whether a rule simulates: tried on fewer sites, because every one of them takes a while. */
const SIMULATES = new Set(['short-cycling']);
const QUICK = RULES.filter(({ id }) => !SIMULATES.has(id));

function breaches(facility: Facility, rules: typeof RULES): { rule: string; cause: string; words: string[] }[] {
  return facility.systems.flatMap((system) => {
    const context = contextOf(facility, system, REVIEWED_ON);
    return rules.flatMap((rule) =>
      rule.check(context).map(({ cause, consequence, figures }) => ({
        rule: rule.id,
        cause,
        words: [cause, consequence, ...figures.flatMap(({ name, value }) => [name, value])],
      })),
    );
  });
}

function reversed<T>(list: readonly T[]): T[] {
  return [...list].reverse();
}

/** The same site with the members of its lists in another order. */
function reordered(facility: Facility): Facility {
  return {
    ...facility,
    circuits: reversed(facility.circuits),
    monitors: reversed(facility.monitors),
    shifts: reversed(facility.shifts),
    systems: facility.systems.map((system) => ({
      ...system,
      tanks: reversed(system.tanks),
      equipment: reversed(system.equipment),
      sensors: reversed(system.sensors),
      stock: reversed(system.stock),
      alarms: reversed(system.alarms),
      states: reversed(system.states),
    })),
  };
}

const judged = (facility: Facility): string[] =>
  breaches(facility, QUICK)
    .map(({ rule, cause }) => `${rule}: ${cause}`)
    .sort();

test('no rule fails on any valid site, whatever is unknown in it, and none says anything that is not words', () => {
  let found = 0;
  fc.assert(
    fc.property(anyFacility(), (facility) => {
      for (const { words } of breaches(facility, QUICK)) {
        found++;
        expect(words.join('\n')).not.toMatch(/NaN|undefined|Infinity/);
        expect(words.every((word) => word.trim() !== '')).toBe(true);
      }
    }),
    { numRuns: 150, endOnFailure: true },
  );
  expect(found).toBeGreaterThan(1000);
});

test('a rule that simulates does not fail where the system cannot be run', () => {
  const simulating = RULES.filter(({ id }) => SIMULATES.has(id));
  expect(simulating.length).toBe(SIMULATES.size);
  fc.assert(
    fc.property(anyFacility(), (facility) => {
      for (const { words } of breaches(facility, simulating)) expect(words.join('\n')).not.toMatch(/NaN|undefined/);
    }),
    { numRuns: 60, endOnFailure: true },
  );
});

test('the order in which things are listed changes nothing', () => {
  fc.assert(
    fc.property(anyFacility(), (facility) => {
      expect(judged(reordered(facility))).toEqual(judged(facility));
    }),
    { numRuns: 150, endOnFailure: true },
  );
});
