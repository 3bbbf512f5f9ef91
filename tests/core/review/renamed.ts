import type { Facility } from '#core/facility/facility';

/** Fields that hold a key of the site's own, or refer to one. */
const REFERS = new Set([
  'key',
  'room',
  'tank',
  'circuit',
  'rcd',
  'gateway',
  'sensor',
  'sensors',
  'equipment',
  'source',
  'people',
  'systems',
  'answeredBy',
  'safeguard',
  'upsSafeguard',
  'siphonSafeguard',
  'runLimitSafeguard',
  'endSafeguard',
]);
/** Words of the format that stand where a key could. */
const WORDS = new Set(['rota', 'nobody', 'mains']);

/** A site whose things all have other keys and other names, each key with `x-` before it. */
export function renamed(site: Facility): Facility {
  return walked(site, '') as Facility;
}

function walked(value: unknown, field: string): unknown {
  if (Array.isArray(value)) return value.map((part) => walked(part, field));
  if (typeof value === 'string') {
    if (field === 'group') return `Other ${value}`;
    return REFERS.has(field) && !WORDS.has(value) ? `x-${value}` : value;
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, walked(part, name)]));
}

/** A site with every list of things the other way round; the order of nothing that has one is touched. */
export function reordered(site: Facility): Facility {
  return {
    ...site,
    rooms: site.rooms.toReversed(),
    circuits: site.circuits.toReversed(),
    monitors: site.monitors.toReversed(),
    safeguards: site.safeguards.toReversed(),
    people: site.people.toReversed(),
    shifts: site.shifts
      .toReversed()
      .map((one) => ({ ...one, days: one.days.toReversed(), people: one.people.toReversed() })),
    rounds: site.rounds
      .toReversed()
      .map((one) => ({ ...one, days: one.days.toReversed(), sees: one.sees.toReversed() })),
    systems: site.systems.map((one) => ({
      ...one,
      tanks: one.tanks.toReversed(),
      equipment: one.equipment.toReversed(),
      sensors: one.sensors.toReversed(),
      stock: one.stock.toReversed(),
      safeguards: one.safeguards.toReversed(),
      alarms: one.alarms.toReversed(),
      states: one.states.toReversed(),
    })),
  };
}
