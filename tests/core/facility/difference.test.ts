import { difference } from '#core/facility/difference';
import type { Facility } from '#core/facility/facility';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyFacility } from '../../_support/any-facility';
import { airBlower, heater, returnPump } from '../../_support/build-equipment';
import { facility, person } from '../../_support/build-facility';
import { system } from '../../_support/build-system';
import { entered, unknown } from '../../_support/given';
import { withEquipment, withSystem } from '../../_support/with-part';

type Leaves = Map<string, string>;

/** Every leaf below a value by path, written independently of the code under test. */
function leavesOf(value: unknown, path = ''): Leaves {
  const out: Leaves = new Map();
  const isLeaf =
    typeof value !== 'object' ||
    value === null ||
    'origin' in value ||
    (Array.isArray(value) && typeof value[0] !== 'object');
  if (isLeaf) {
    if (value !== undefined && !(Array.isArray(value) && value.length === 0)) out.set(path, JSON.stringify(value));
    return out;
  }
  for (const [name, part] of Object.entries(value)) {
    const known = (part as { key?: string; name?: string; state?: string; on?: string } | null) ?? {};
    const called = Array.isArray(value) ? (known.key ?? known.name ?? known.state ?? known.on ?? name) : name;
    for (const [at, leaf] of leavesOf(part, path === '' ? `${called}` : `${path}/${called}`)) out.set(at, leaf);
  }
  return out;
}

function applied(before: Facility, after: Facility): Leaves {
  const leaves = leavesOf(before);
  for (const { path, kind, to } of difference(before, after)) {
    if (kind !== 'added')
      for (const at of [...leaves.keys()]) if (at === path || at.startsWith(`${path}/`)) leaves.delete(at);
    if (kind !== 'removed') for (const [at, leaf] of leavesOf(to, path)) leaves.set(at, leaf);
  }
  return leaves;
}

/** Tests on one day have no name that tells them apart, nor have cut-outs; they are left out of the random pairs. */
function named(of: Facility): Facility {
  const bare = (list: Facility['safeguards']) => list.map((one) => ({ ...one, tests: one.tests.slice(0, 1) }));
  return {
    ...of,
    safeguards: bare(of.safeguards),
    systems: of.systems.map((one) => ({ ...one, safeguards: bare(one.safeguards) })),
  };
}

describe('the difference between two facilities', () => {
  test('is nothing when they are the same', () => {
    fc.assert(
      fc.property(anyFacility(), (given) => {
        expect(difference(given, structuredClone(given))).toEqual([]);
      }),
      { numRuns: 10 },
    );
  });

  test('lists every changed leaf once: laid over the first it gives the second', () => {
    fc.assert(
      fc.property(anyFacility(), anyFacility(), (one, other) => {
        const [before, after] = [named(one), named(other)];
        const paths = difference(before, after).map(({ path }) => path);
        expect(new Set(paths).size).toBe(paths.length);
        expect([...applied(before, after)].sort()).toEqual([...leavesOf(after)].sort());
      }),
      { numRuns: 20 },
    );
  });

  test('does not see the order of keyed lists', () => {
    const given = facility();
    const turned = withSystem({
      equipment: [...system().equipment].reverse(),
      tanks: [...system().tanks].reverse(),
      states: [...system().states].reverse(),
    });
    expect(difference(given, { ...turned, circuits: [...given.circuits].reverse() })).toEqual([]);
  });

  test('names a figure by the keys on its way, as one leaf', () => {
    expect(difference(facility(), withEquipment(heater({ ratedW: 300 })))).toEqual([
      { path: 'systems/reef-1/equipment/heater-1/ratedW', kind: 'changed', from: entered(150), to: entered(300) },
    ]);
  });

  test('tells a figure that became unknown from one that was taken away', () => {
    const path = 'systems/reef-1/equipment/return-pump/flowLPerH';
    expect(difference(facility(), withEquipment(returnPump({ flowLPerH: unknown() })))).toEqual([
      { path, kind: 'changed', from: entered(3000), to: unknown() },
    ]);
    expect(difference(facility(), withEquipment(returnPump({ flowLPerH: undefined })))).toEqual([
      { path, kind: 'removed', from: entered(3000) },
    ]);
  });

  test('lists a whole member that is new, and one that is gone, once each', () => {
    const kim = person({ key: 'kim', name: 'Kim' });
    const [robin, sam] = facility().people;
    const after = facility({ people: robin ? [robin, kim] : [] });
    expect(difference(facility(), after)).toEqual([
      { path: 'people/sam', kind: 'removed', from: sam },
      { path: 'people/kim', kind: 'added', to: kim },
    ]);
  });

  test('takes a list of plain words as one leaf', () => {
    const after = facility({
      shifts: facility().shifts.map((one) => ({ ...one, days: ['mon'] as const satisfies string[] })),
    });
    expect(difference(facility(), after).map(({ path }) => path)).toEqual(['shifts/day/days', 'shifts/night/days']);
  });

  test('sees what has no key by its place', () => {
    const after = withEquipment(airBlower({ stones: [{ tank: 'display', count: 3 }] }));
    expect(difference(facility(), after)).toEqual([
      { path: 'systems/reef-1/equipment/air-blower/stones/0/count', kind: 'changed', from: 2, to: 3 },
    ]);
  });
});
