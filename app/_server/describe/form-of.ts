import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { DEFAULT_PROFILES } from '#core/facility/profiles';
import type { SensorQuantity, System } from '#core/facility/system';
import type { Field, FieldUnit, Option } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import type { FieldUnit as FileUnit } from '#shape/facility/field-unit';
import { fieldsOf, type FormScope } from '#shape/form/fields-of';
import type { Referred } from '#shape/form/hints';
import { shownDifference, shownUnit } from '#shape/form/shown-unit';

/** Where the thing of a form stands, and who fills it in. */
export interface FormPlace {
  facility: Facility;
  /** The system whose tanks, equipment, sensors and safeguards can be chosen; null for a thing of the site. */
  system: System | null;
  custom: Custom;
}

/** Units of what a sensor measures; what is not here is a plain number. */
const UNITS: Readonly<Record<string, FileUnit>> = {
  temperature: 'C',
  level: 'Mm',
  flow: 'LPerH',
  oxygen: 'MgL',
  salinity: 'psu',
  watts: 'W',
  ammonia: 'MgL',
  nitrite: 'MgL',
  nitrate: 'MgL',
  phosphate: 'MgL',
  'carbon-dioxide': 'MgL',
  oxidant: 'MgL',
  alkalinity: 'mmolL',
  ph: 'pH',
} satisfies Partial<Record<SensorQuantity, FileUnit>>;

/**
 * The fields of a form for any shape of the facility file: what can be referred to is a choice by name, figures are in the
 * person's units. `draftOf` and `readDraft` of `_shape/form` turn a thing into what such a form holds and back;
 * `_ui/form` shows it.
 *
 * @param shape   an object of the facility file, for example that of a plan
 * @param place   what can be chosen, and the person's custom
 */
export function formOf(shape: z.ZodType, { facility, system, custom }: FormPlace): Field[] {
  const scope: FormScope = {
    custom,
    choicesOf: (to, of) => choices(facility, system, to, of),
    unitsBy: (via, difference) => (via === 'sensor' ? bySensor(system, custom, difference) : BY_QUANTITY[via](custom)),
  };
  return fieldsOf(shape, scope);
}

function choices(facility: Facility, system: System | null, to: Referred, of: string | undefined): Option[] {
  const safeguards = [...(system?.safeguards ?? []), ...facility.safeguards];
  const lists: Record<Referred, () => readonly { key: string; name: string }[]> = {
    room: () => facility.rooms,
    circuit: () => facility.circuits,
    gateway: () => facility.monitors.filter(({ kind }) => kind === 'gateway'),
    competence: () => facility.site.competences ?? [],
    person: () => facility.people,
    system: () => facility.systems,
    profile: () => [...facility.profiles, ...DEFAULT_PROFILES],
    tank: () => (system?.tanks ?? []).filter(({ role }) => of === undefined || role === of),
    equipment: () => system?.equipment ?? [],
    sensor: () => (system?.sensors ?? []).filter(({ quantity }) => of === undefined || quantity === of),
    safeguard: () => safeguards.filter(({ kind }) => of === undefined || kind === of),
  };
  return lists[to]().map(({ key, name }) => ({ value: key, name }));
}

function bySensor(system: System | null, custom: Custom, difference: boolean): Record<string, FieldUnit> {
  return Object.fromEntries(
    (system?.sensors ?? []).map(({ key, quantity }) => [key, unitOfQuantity(quantity, custom, difference)]),
  );
}

const BY_QUANTITY = {
  probe: (custom: Custom): Record<string, FieldUnit> => ({
    temperature: shownUnit('C', custom),
    level: shownUnit('Mm', custom),
  }),
  limit: (custom: Custom): Record<string, FieldUnit> => ({
    temperature: shownUnit('C', custom),
    salinity: shownUnit('psu', custom),
    oxygen: shownUnit('MgL', custom),
    level: { is: 'number', symbol: 'part of its water' },
    'rise-24h': shownDifference(custom),
    'fall-24h': shownDifference(custom),
    ammonia: shownUnit('MgL', custom),
    'carbon-dioxide': shownUnit('MgL', custom),
    ph: shownUnit('pH', custom),
    oxidant: shownUnit('MgL', custom),
  }),
};

function unitOfQuantity(quantity: string, custom: Custom, difference: boolean): FieldUnit {
  if (quantity === 'temperature' && difference) return shownDifference(custom);
  return shownUnit(UNITS[quantity] ?? 'number', custom);
}
