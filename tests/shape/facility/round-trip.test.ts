import { readFacility } from '#shape/facility/read-facility';
import { writeFacility } from '#shape/facility/write-facility';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyFacility } from '../../_support/any-facility';
import { facility } from '../../_support/build-facility';

describe.each(['json', 'yaml'] as const)('a facility written as %s', (format) => {
  test('reads back as the same facility, whatever it holds, and is then written the same way again', () => {
    fc.assert(
      fc.property(anyFacility(), (given) => {
        const text = writeFacility(given, { format });
        const read = readFacility(text, { format });
        expect(read).toEqual({ ok: true, value: given });
        expect(read.ok && writeFacility(read.value, { format })).toBe(text);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the canonical form', () => {
  test('does not depend on the order in which fields came', () => {
    const given = facility();
    const turned = Object.fromEntries(Object.entries(given).reverse()) as typeof given;
    expect(writeFacility(turned)).toBe(writeFacility(given));
  });

  test('is plain JSON, ends in a line break and begins with the format', () => {
    const text = writeFacility(facility());
    expect(text.endsWith('}\n')).toBe(true);
    expect(Object.entries(JSON.parse(text))[0]).toEqual(['format', 'holdfast.facility/1']);
  });

  test('leaves empty lists out and writes figures as short as they can be', () => {
    const { rooms, profiles, circuits } = JSON.parse(writeFacility(facility()));
    expect(profiles).toBeUndefined();
    expect(circuits[0].backedBy).toBeUndefined();
    expect(rooms[0].temperatureC).toBe(21);
  });

  test('refuses to be made from a facility that is not valid', () => {
    expect(() =>
      writeFacility(
        facility({ systems: [], rooms: [{ key: 'Not A Key', name: 'x', temperatureC: [], humidityPct: [] }] }),
      ),
    ).toThrow();
  });
});
