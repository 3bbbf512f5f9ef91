import { DEFAULTS } from '../equipment/defaults';
import { LID } from '../equipment/resolve-tank';
import type { InputNote } from '../equipment/take';
import type { ResolvedSystem, ResolvedTank } from '../equipment/resolved';
import type { System } from '../facility/system';
import { evaporationTransfer } from '../water/evaporation-transfer';
import { respirationAtReference, respirationFactor } from '../water/respiration';
import { surfaceConvection } from '../water/surface-convection';
import type { Found } from './found';

/** The figure of the description that a fit belongs into. */
export interface Target {
  noun: 'tank' | 'equipment' | 'stock';
  key: string;
  name: string;
  field: 'lossWPerK' | 'evaporationActivity' | 'gasTransferLPerH' | 'oxygenMgPerKgH';
  /** In the field's unit. */
  value: number;
  low: number;
  high: number;
  /** The same as the model has it now, and its plausible range; null where it is taken as exact. */
  inUse: number;
  rangeInUse: { low: number; high: number } | null;
}

/** A part of what was fitted that one thing of the description stands for; the rest stays as it is. */
interface Part {
  noun: Target['noun'];
  key: string;
  name: string;
  field: Target['field'];
  /** In the unit of the fit. */
  size: number;
  /** What one unit of the field is worth in the unit of the fit. */
  worth: number;
}

/** Least part of the whole that one thing must stand for, so that the rest is small beside it. Common practice, no source. */
const LEAST_PART = 0.5;

/** Why no single figure can take what was found. */
export type NoTarget = 'many-alike' | 'nothing-left';

/**
 * Where what was found belongs in the description. Readings tell of all the water that mixes; the thing that stands for most
 * of it takes the difference, and everything else stays as described.
 *
 * @param tanks   those that mix
 */
export function targetOf(
  found: Found,
  system: System,
  resolved: ResolvedSystem,
  tanks: readonly ResolvedTank[],
): Target | NoTarget {
  const parts = partsOf(found, system, resolved, tanks);
  const [main] = [...parts].sort((a, b) => b.size - a.size);
  const all = parts.reduce((sum, { size }) => sum + size, 0);
  if (!main || main.size < LEAST_PART * all) return 'many-alike';
  const rest = found.inUse - main.size;
  const [value, low, high] = [found.value, found.low, found.high].map((whole) => (whole - rest) / main.worth);
  if (value === undefined || low === undefined || high === undefined || !(value > 0)) return 'nothing-left';
  const { noun, key, name, field } = main;
  const path = `systems/${system.key}/${LISTS[noun]}/${key}/${field}`;
  const note = resolved.notes.find((one) => one.path === path);
  return {
    ...{ noun, key, name, field },
    ...rounded(value, Math.max(0, low), high),
    inUse: main.size / main.worth,
    rangeInUse: note ? rangeOf(note, main.size / main.worth) : null,
  };
}

const LISTS: Record<Target['noun'], string> = { tank: 'tanks', equipment: 'equipment', stock: 'stock' };

/** A default may be told in another unit than the field's: its range is then the same part of what is in use. */
function rangeOf({ value, low, high }: InputNote, inUse: number) {
  const scale = value === 0 ? 1 : inUse / value;
  return { low: low * scale, high: high * scale };
}

/** Three digits, the ends outwards. */
function rounded(value: number, low: number, high: number): Pick<Target, 'value' | 'low' | 'high'> {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  const inSteps = (x: number, round: (steps: number) => number) => Number((round(x / step) * step).toPrecision(12));
  return { value: inSteps(value, Math.round), low: inSteps(low, Math.floor), high: inSteps(high, Math.ceil) };
}

function partsOf(
  { is, inUse }: Found,
  system: System,
  resolved: ResolvedSystem,
  tanks: readonly ResolvedTank[],
): Part[] {
  switch (is) {
    case 'heat-loss':
      return tanks.map(({ tank, loss, surface }) => ({
        ...{ noun: 'tank', key: tank.key, name: tank.name, field: 'lossWPerK' },
        size: loss - surfaceConvection(surface) * (tank.cover === 'lidded' ? LID : 1),
        worth: 1,
      }));
    case 'evaporation': {
      const whole = tanks.reduce((sum, { evaporation }) => sum + evaporation, 0);
      return tanks.map(({ tank, evaporation, surface }) => ({
        ...{ noun: 'tank', key: tank.key, name: tank.name, field: 'evaporationActivity' },
        size: (inUse * evaporation) / whole,
        worth: (inUse * evaporationTransfer(surface, DEFAULTS.airSpeedMPerS.value, 1)) / whole,
      }));
    }
    case 'oxygen-transfer':
      return devicesOf(resolved, tanks);
    case 'oxygen-use':
      return stocksOf(system, resolved, tanks);
  }
}

const L_PER_H = 3.6e6;

function devicesOf({ devices }: ResolvedSystem, tanks: readonly ResolvedTank[]): Part[] {
  const keys = new Set(tanks.map(({ tank }) => tank.key));
  return devices.flatMap(({ equipment, gas }): Part[] => {
    const size = L_PER_H * gas.filter(({ tank }) => keys.has(tank)).reduce((sum, { flow }) => sum + flow, 0);
    const stones = (equipment.stones ?? [{ tank: equipment.tank, count: 1 }]).filter(({ tank }) => keys.has(tank));
    const worth = equipment.type === 'air-blower' ? stones.reduce((sum, { count }) => sum + count, 0) : 1;
    const { key, name } = equipment;
    return size > 0 ? [{ noun: 'equipment', key, name, field: 'gasTransferLPerH', size, worth }] : [];
  });
}

function stocksOf(system: System, resolved: ResolvedSystem, tanks: readonly ResolvedTank[]): Part[] {
  const keys = new Set(tanks.map(({ tank }) => tank.key));
  const lively = resolved.notes.find(({ path }) => path === `systems/${system.key}/activity`)?.value;
  const factor = respirationFactor(resolved.temperature);
  // What bacteria use grows with what the animals use: they take their share of the figure along.
  const share = 1 + resolved.bacteriaShare;
  return system.stock.flatMap(({ key, group, tank, count, eachG, oxygenMgPerKgH }): Part[] => {
    if (!keys.has(tank) || eachG.value === null) return [];
    const kg = (count * eachG.value) / 1000;
    const resting = respirationAtReference(eachG.value / 1000) * count * L_PER_H;
    const measured = oxygenMgPerKgH?.value ?? null;
    const use = measured === null ? resting * (lively ?? DEFAULTS.activityFactor.value) : (measured * kg) / factor;
    return [
      { noun: 'stock', key, name: group, field: 'oxygenMgPerKgH', size: use * share, worth: (kg * share) / factor },
    ];
  });
}
