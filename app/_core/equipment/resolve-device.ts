import type { Facility } from '../facility/facility';
import type { Equipment, System } from '../facility/system';
import { DEFAULTS, heatToWaterOf, repairMinOf, scaled } from './defaults';
import type { ResolvedDevice, ResolvedTank } from './resolved';
import { chemistryOf } from './resolve-brings';
import { EITHER, type Fallback, HEAT, LESS, LOSS, MORE, take, type Taker } from './take';

const L_PER_H = 1 / 3.6e6;

/** One piece of equipment in numbers; `salinity` is the system's own. */
export function resolveDevice(
  t: Taker,
  facility: Facility,
  system: System,
  equipment: Equipment,
  tanks: ResolvedTank[],
  salinity: number,
): ResolvedDevice {
  const at = (field: string) => `systems/${system.key}/equipment/${equipment.key}/${field}`;
  const called = (what: string) => `${what} of ${equipment.name}`;
  const flow = flowOf(t, equipment, at('flowLPerH'), called('flow'));
  const mm = (field: 'floodsAboveMm' | 'floodLPerHPerMm', what: string, bad: typeof LESS, fallback: Fallback) =>
    equipment.type === 'skimmer' ? take(t, at(field), called(what), equipment[field], bad, fallback) : 0;
  return {
    equipment,
    watts: wattsOf(t, equipment, flow, at('ratedW'), called('power')),
    heatShare: take(
      t,
      at('heatToWater'),
      called('heat to the water'),
      equipment.heatToWater,
      HEAT,
      heatToWaterOf(equipment.type),
    ),
    flow,
    coolingW:
      equipment.type === 'chiller' ? take(t, at('coolingW'), called('cooling power'), equipment.coolingW, LOSS) : 0,
    gas: gasOf(t, equipment, tanks, at('gasTransferLPerH'), called('oxygen exchange')),
    floodsAbove: mm('floodsAboveMm', 'level at which it floods', LESS, DEFAULTS.floodsAboveMm) / 1000,
    floodPerM: mm('floodLPerHPerMm', 'spill when flooded', MORE, DEFAULTS.floodLPerHPerMm) * 1000 * L_PER_H,
    ...wasteOf(t, equipment, tanks, flow, at, called),
    ...chemistryOf(t, facility, equipment, salinity, at, called),
    repairS:
      60 *
      take(t, at('repairMin'), called('work to put right'), equipment.repairMin, MORE, repairMinOf(equipment.type)),
  };
}

function flowOf(t: Taker, equipment: Equipment, path: string, name: string): number {
  if (equipment.type === 'return-pump') return take(t, path, name, equipment.flowLPerH, EITHER) * L_PER_H;
  if (equipment.type === 'top-off')
    return take(t, path, name, equipment.flowLPerH, MORE, DEFAULTS.topOffLPerH) * L_PER_H;
  if (equipment.type === 'doser') return take(t, path, name, equipment.flowLPerH, MORE, DEFAULTS.doserLPerH) * L_PER_H;
  if (equipment.type === 'supply') return take(t, path, name, equipment.flowLPerH, EITHER) * L_PER_H;
  return (equipment.flowLPerH?.value ?? 0) * L_PER_H;
}

function wattsOf(t: Taker, equipment: Equipment, flow: number, path: string, name: string): number {
  if (equipment.type === 'heater') return take(t, path, name, equipment.ratedW, HEAT);
  const perM3H =
    flow > 0
      ? scaled(DEFAULTS.pumpWPerM3H, flow * 3600, 'W')
      : { value: 0, low: 0, high: 0, unit: 'W', source: 'not given; taken as nothing' };
  return take(t, path, name, equipment.ratedW, HEAT, perM3H);
}

function gasOf(
  t: Taker,
  equipment: Equipment,
  tanks: ResolvedTank[],
  path: string,
  name: string,
): { tank: string; flow: number }[] {
  const one = (perH: Fallback, volume: number) =>
    take(t, path, name, equipment.gasTransferLPerH, LESS, scaled(perH, volume * 1000, 'L/h')) * L_PER_H;
  const whole = tanks.reduce((sum, tank) => sum + tank.volume, 0);
  const own = tanks.find((tank) => tank.tank.key === equipment.tank)?.volume ?? 0;
  switch (equipment.type) {
    case 'skimmer':
      return [{ tank: equipment.tank, flow: one(DEFAULTS.skimmerPerH, whole) }];
    case 'circulation-pump':
      return [{ tank: equipment.tank, flow: one(DEFAULTS.circulationPerH, own) }];
    case 'air-blower': {
      const each =
        take(t, path, `${name}, each stone`, equipment.gasTransferLPerH, LESS, DEFAULTS.stoneLPerH) * L_PER_H;
      const stones = equipment.stones ?? [{ tank: equipment.tank, count: 1 }];
      return stones.map((s) => ({ tank: s.tank, flow: each * s.count }));
    }
    case 'heater':
    case 'chiller':
    case 'return-pump':
    case 'top-off':
    case 'filter':
    case 'drain-valve':
    case 'light':
    case 'uv':
    case 'ozone':
    case 'doser':
    case 'co2':
    case 'feeder':
    case 'supply':
    case 'dechlorinator':
    case 'other':
      return [];
  }
}

function wasteOf(
  t: Taker,
  equipment: Equipment,
  tanks: ResolvedTank[],
  flow: number,
  at: (field: string) => string,
  called: (what: string) => string,
): { waste: number; wasteTo: number } {
  if (equipment.type !== 'filter' && equipment.type !== 'drain-valve') return { waste: 0, wasteTo: 0 };
  const pumped = equipment.type === 'filter' && flow > 0;
  const usual = pumped
    ? { value: flow / L_PER_H, low: flow / L_PER_H, high: flow / L_PER_H, unit: 'L/h', source: 'its own flow' }
    : DEFAULTS.drainLPerH;
  const waste =
    take(t, at('wasteLPerH'), called('flow through its open waste'), equipment.wasteLPerH, MORE, usual) * L_PER_H;
  const tank = tanks.find((one) => one.tank.key === equipment.tank);
  const depth = tank ? tank.volume / tank.surface : 0;
  // Unless somebody says how deep it reaches, a waste at the foot of a tank takes nine tenths of the depth.
  const foot: Fallback = {
    value: 900 * depth,
    low: 500 * depth,
    high: 900 * depth,
    unit: 'mm',
    source: 'nine tenths of the depth; common practice, no source',
  };
  return {
    waste,
    wasteTo: take(t, at('wasteToMm'), called('depth of its waste'), equipment.wasteToMm, MORE, foot) / 1000,
  };
}
