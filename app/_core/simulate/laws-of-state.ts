import type { PhScale } from '../facility/system';
import { CARBON_DIOXIDE } from '../water/carbon-dioxide-saturation';
import { carbonDioxideShare, phAt } from '../water/carbonate-balance';
import { oxygenSaturation } from '../water/oxygen-saturation';
import { conductivity as conductivityOf } from '../water/practical-salinity';
import { unionisedShare } from '../water/unionised-ammonia';
import { shareOfAmmonia } from './ammonia-table';
import { constantsAt, phOn } from './chemistry';
import type { Follower } from './layout';
import { OXYGEN, type Plant, SALT, STRIDE, TEMPERATURE, VOLUME } from './plant';
import { salinityOf } from './rates';
import { type Ceiling, lawful, linear, lost, type Signal } from './signal';

/** Indices that a node's temperature and salinity are read from. */
function warmthAndSalt(node: number): number[] {
  return [STRIDE * node + VOLUME, STRIDE * node + TEMPERATURE, STRIDE * node + SALT];
}

function temperatureAt(x: Float64Array, node: number): number {
  return x[STRIDE * node + TEMPERATURE] as number;
}

function salinityAt(plant: Plant, x: Float64Array, node: number): number {
  return salinityOf(plant, x[STRIDE * node + SALT] as number, x[STRIDE * node + VOLUME] as number);
}

/** Concentration of a follower in a node, in its own unit times `scale`; lost where it is not carried. */
export function dissolved(plant: Plant, node: number, name: Follower, scale = 1, shift = 0): Signal {
  const from = plant.layout.followers[name];
  return from < 0 ? lost() : linear(from + node, scale, shift);
}

/** Where alkalinity and carbon of a node stand; null where they are not carried. */
function carbonate(plant: Plant, node: number): { alkalinity: number; carbon: number } | null {
  const { alkalinity, carbon } = plant.layout.followers;
  return alkalinity < 0 || carbon < 0 ? null : { alkalinity: alkalinity + node, carbon: carbon + node };
}

function phNow(
  plant: Plant,
  node: number,
  at: { alkalinity: number; carbon: number },
  scale: PhScale,
  x: Float64Array,
): number {
  return phOn(scale, plant.chemistry, {
    temperature: temperatureAt(x, node),
    salinity: salinityAt(plant, x, node),
    alkalinity: x[at.alkalinity] as number,
    carbon: x[at.carbon] as number,
  });
}

/** pH of a node on a scale; lost where carbon is not carried. */
export function phOfNode(plant: Plant, node: number, scale: PhScale, shift = 0): Signal {
  const at = carbonate(plant, node);
  if (!at) return lost();
  const reads = [...warmthAndSalt(node), at.alkalinity, at.carbon];
  return lawful((x) => phNow(plant, node, at, scale, x), reads, plant.size, shift);
}

/** mg/L of free carbon dioxide in a node; lost where carbon is not carried. */
export function freeCarbonDioxide(plant: Plant, node: number, shift = 0): Signal {
  const at = carbonate(plant, node);
  if (!at) return lost();
  const { chemistry } = plant;
  const of = (x: Float64Array) => {
    const constants = constantsAt(chemistry, temperatureAt(x, node), salinityAt(plant, x, node));
    const carbon = x[at.carbon] as number;
    const ph = phAt(constants, x[at.alkalinity] as number, carbon, chemistry.ph);
    return CARBON_DIOXIDE * carbon * carbonDioxideShare(constants, ph);
  };
  return lawful(of, [...warmthAndSalt(node), at.alkalinity, at.carbon], plant.size, shift);
}

/** mg/L of un-ionised ammonia (as N) in a node, at the pH the model has there, else at the worst of a day; lost where it is not carried. */
export function freeAmmonia(plant: Plant, node: number): Signal {
  const from = plant.layout.followers.ammonia;
  if (from < 0) return lost();
  const at = carbonate(plant, node);
  const of = (x: Float64Array) => {
    const ph = at ? phNow(plant, node, at, 'nbs', x) : plant.chemistry.ph;
    return (x[from + node] as number) * shareOfAmmonia(ph, temperatureAt(x, node), salinityAt(plant, x, node));
  };
  const reads = [...warmthAndSalt(node), from + node, ...(at ? [at.alkalinity, at.carbon] : [])];
  return lawful(of, reads, plant.size, 0, at ? null : ceilingOf(plant, node, from + node));
}

/** °C below which the share of un-ionised ammonia at a pH is known to stay under that at it. */
const WARMEST = 45;

function ceilingOf({ chemistry }: Plant, node: number, index: number): Ceiling {
  // Little salt leaves most of it un-ionised: salinity 2.25, of all up to 60 in quarters; a hundredth is kept in hand.
  const factor = 1.01 * unionisedShare(chemistry.ph, 'nbs', WARMEST, 2.25);
  return { index, factor, warmth: STRIDE * node + TEMPERATURE, below: WARMEST };
}

/** Oxygen of a node in percent of what the room's pressure would hold in it. */
export function oxygenSaturationPct(plant: Plant, node: number, shift = 0): Signal {
  const of = (x: Float64Array) =>
    (100 * (x[STRIDE * node + OXYGEN] as number)) /
    oxygenSaturation(temperatureAt(x, node), salinityAt(plant, x, node), plant.pressureAtm);
  return lawful(of, [...warmthAndSalt(node), STRIDE * node + OXYGEN], plant.size, shift);
}

/** Conductivity of a node, mS/cm, as it is. @param atC °C that the meter brings it to, if it does */
export function conductivity(plant: Plant, node: number, shift = 0, atC?: number): Signal {
  const of = (x: Float64Array) => conductivityOf(salinityAt(plant, x, node), atC ?? temperatureAt(x, node));
  return lawful(of, warmthAndSalt(node), plant.size, shift);
}
