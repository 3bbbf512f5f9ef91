import type { Facility } from '#core/facility/facility';
import type { Equipment, System } from '#core/facility/system';
import type { Condition, Plan, Regulation } from '#core/plans/plan';

/** What a key becomes. */
export type Rename = (key: string) => string;

/** The same site under other names: every key of a tank, sensor, piece of equipment and stock, and every mention of it. */
export function renamed(site: Facility, to: Rename): Facility {
  return { ...site, systems: site.systems.map((one) => system(one, to)) };
}

/** The same site with every list of its systems the other way round. */
export function reordered(site: Facility): Facility {
  const back = <T>(list: readonly T[]): T[] => [...list].reverse();
  return {
    ...site,
    systems: site.systems.map((one) => ({
      ...one,
      tanks: back(one.tanks),
      equipment: back(one.equipment).map((e) => ({ ...e, ...(e.stones ? { stones: back(e.stones) } : {}) })),
      sensors: back(one.sensors),
      stock: back(one.stock),
    })),
  };
}

function system(one: System, to: Rename): System {
  return {
    ...one,
    tanks: one.tanks.map((t) => ({ ...t, key: to(t.key) })),
    equipment: one.equipment.map((e) => equipment(e, to)),
    sensors: one.sensors.map((s) => ({
      ...s,
      key: to(s.key),
      ...(s.tank ? { tank: to(s.tank) } : {}),
      ...(s.equipment ? { equipment: to(s.equipment) } : {}),
    })),
    stock: one.stock.map((s) => ({ ...s, key: to(s.key), tank: to(s.tank) })),
  };
}

function equipment(e: Equipment, to: Rename): Equipment {
  return {
    ...e,
    key: to(e.key),
    tank: to(e.tank),
    plan: plan(e.plan, to),
    ...(e.stones ? { stones: e.stones.map((s) => ({ ...s, tank: to(s.tank) })) } : {}),
    ...(e.source && e.source !== 'mains' ? { source: to(e.source) } : {}),
  };
}

function plan(of: Plan, to: Rename): Plan {
  return {
    ...of,
    cutOuts: of.cutOuts.map((c) => ({ ...c, tank: to(c.tank) })),
    interlocks: of.interlocks.map((l) => ({ ...l, when: condition(l.when, to) })),
    regulation: regulation(of.regulation, to),
  };
}

function condition(when: Condition, to: Rename): Condition {
  return when.kind === 'sensor' ? { ...when, sensor: to(when.sensor) } : when;
}

function regulation(line: Regulation, to: Rename): Regulation {
  if (line.kind === 'thermostat') return { ...line, sensors: line.sensors.map(to) };
  return line.kind === 'level' ? { ...line, sensor: to(line.sensor) } : line;
}
