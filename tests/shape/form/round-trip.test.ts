import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { DraftGroup } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { formOf } from '#server/describe/form-of';
import { circuitShape } from '#shape/facility/circuit';
import { equipmentShape } from '#shape/facility/equipment';
import { facilityShape } from '#shape/facility/facility';
import { alarmShape } from '#shape/facility/alarm';
import { personShape } from '#shape/facility/person';
import { roomShape } from '#shape/facility/room';
import { sensorShape } from '#shape/facility/sensor';
import { shiftShape } from '#shape/facility/shift';
import { siteShape } from '#shape/facility/site';
import { stockShape } from '#shape/facility/stock';
import { tankShape } from '#shape/facility/tank';
import { toleranceProfileShape } from '#shape/facility/tolerance-profile';
import { draftOf } from '#shape/form/draft-of';
import { readDraft } from '#shape/form/read-draft';
import { anyFacility } from '../../_support/any-facility';
import { facility } from '../../_support/build-facility';

type Thing = Record<string, unknown>;

/** Every thing of a facility with the shape it has, and the system it stands in. */
function thingsOf(given: Facility): { shape: z.ZodType; held: Thing; system: number | null }[] {
  const form = z.encode(facilityShape, given);
  const at = (shape: z.ZodType, list: readonly object[] | undefined, system: number | null) =>
    (list ?? []).map((held) => ({ shape, held: held as Thing, system }));
  return [
    ...at(siteShape, [form.site], null),
    ...at(roomShape, form.rooms, null),
    ...at(circuitShape, form.circuits, null),
    ...at(personShape, form.people, null),
    ...at(shiftShape, form.shifts, null),
    ...at(toleranceProfileShape, form.profiles, null),
    ...(form.systems ?? []).flatMap((system, index) => [
      ...at(tankShape, system.tanks, index),
      ...at(equipmentShape, system.equipment, index),
      ...at(sensorShape, system.sensors, index),
      ...at(stockShape, system.stock, index),
      ...at(alarmShape, system.alarms, index),
    ]),
  ];
}

function throughForm(given: Facility, custom: Custom, isKnown: boolean): { held: unknown; read: unknown }[] {
  return thingsOf(given).map(({ shape, held, system }) => {
    const fields = formOf(shape, {
      facility: given,
      system: system === null ? null : (given.systems[system] ?? null),
      custom,
    });
    const draft: DraftGroup = draftOf(fields, held, custom);
    const sent = JSON.parse(JSON.stringify(draft));
    const read = readDraft(fields, sent, custom, isKnown ? { draft, held } : undefined);
    return { held: shape.parse(held), read: shape.parse(read) };
  });
}

describe('what stands in a form', () => {
  test('says every thing of a facility as the file does, and is read as the same again', () => {
    fc.assert(
      fc.property(anyFacility(), (given) => {
        for (const { held, read } of throughForm(given, 'metric', false)) expect(read).toEqual(held);
      }),
      { numRuns: 8 },
    );
  });

  test('shown in other units and not touched, stays as it was to the last digit', () => {
    fc.assert(
      fc.property(anyFacility(), (given) => {
        for (const { held, read } of throughForm(given, 'us', true)) expect(read).toEqual(held);
      }),
      { numRuns: 8 },
    );
  });
});

describe('a number that is typed', () => {
  const site = facility();
  const place = { facility: site, system: site.systems[0] ?? null };
  const read = (shape: z.ZodType, custom: Custom, draft: DraftGroup) =>
    readDraft(formOf(shape, { ...place, custom }), draft, custom);
  const figure = (value: string) => ({ value, from: '' });

  test.each([
    ['metric', '180', 180],
    ['us', '50', 189.2705892],
    // The gallon of the United States is 3.785411784 litres (NIST Handbook 44, appendix C).
    ['metric', '50 gal', '50 gal'],
    ['us', '180 L', '180 L'],
    ['metric', 'much', 'much'],
  ] as const)(
    'by a person of the %s custom as %s is taken in their own unit, or in the one they name',
    (custom, typed, taken) => {
      expect(read(tankShape, custom, { volumeL: figure(typed) }).volumeL).toEqual(taken);
    },
  );

  test('for an alarm is in the unit of its sensor, and its dead band in differences of it', () => {
    const [sensor] = site.systems[0]?.sensors.filter(({ quantity }) => quantity === 'temperature') ?? [];
    const on = { kind: 'sensor', sensor: sensor?.key ?? '', above: '86', below: '20 °C' };
    const { on: watched, deadBand } = read(alarmShape, 'us', { on, deadBand: '0.9' });
    expect(watched).toMatchObject({ above: 30, below: 20 });
    expect(deadBand).toBeCloseTo(0.5, 12);
  });

  test('that belongs to another type than the one chosen is left out', () => {
    const draft = { type: 'heater', coolingW: figure('300'), ratedW: figure('150') };
    expect(read(equipmentShape, 'metric', draft)).toEqual({ type: 'heater', ratedW: 150 });
  });
});
