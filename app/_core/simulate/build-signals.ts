import type { Sensor, System } from '../facility/system';
import type { ProbeFault, Upset } from '../faults/upset';
import { OXYGEN, type Plant, STRIDE, TEMPERATURE } from './plant';
import { constant, inAir, linear, lost, salinity, type Signal } from './signal';

/** Where the water of each tank stands in the state vector. */
export interface Places {
  /** Node of a tank, −1 for a reservoir or nothing. */
  node: (tank: string | undefined) => number;
  /** Reservoir of a tank, −1 otherwise. */
  reservoir: (tank: string | undefined) => number;
}

/** Level of a node in mm from its running level. */
export function levelSignal(plant: Plant, node: number, shiftMm = 0): Signal {
  const scale = 1000 / (plant.surface[node] as number);
  return linear(STRIDE * node, scale, -scale * (plant.runVolume[node] as number) + shiftMm);
}

/** Water on the floor, litres. */
export function floorSignal(plant: Plant): Signal {
  return linear(plant.size - 1, 1000, 0);
}

/** What a sensor reports under an upset. Flow, watts, pH and what else the model does not reckon with are no
 * numbers of the state: they read as lost here. */
function sensorSignal(sensor: Sensor, plant: Plant, places: Places, upset: Upset): Signal {
  const fault = upset.probes.get(sensor.key);
  if (fault?.as === 'lost') return lost();
  if (fault?.as === 'stuck') return constant(fault.value);
  if (fault?.as === 'air' && sensor.quantity === 'temperature') return inAir();
  const node = places.node(sensor.tank);
  if (sensor.quantity === 'leak') return floorSignal(plant);
  if (node < 0) return lost();
  return healthy(sensor, plant, node, shiftOf(fault));
}

function shiftOf(fault: ProbeFault | undefined): number {
  return fault?.as === 'shifted' ? fault.by : 0;
}

function healthy(sensor: Sensor, plant: Plant, node: number, shift: number): Signal {
  switch (sensor.quantity) {
    case 'temperature':
      return linear(STRIDE * node + TEMPERATURE, 1, shift);
    case 'level':
      return levelSignal(plant, node, shift);
    case 'salinity':
      return salinity(node, plant.density, shift);
    case 'oxygen':
      return linear(STRIDE * node + OXYGEN, 1, shift);
    case 'leak':
      return floorSignal(plant);
    case 'flow':
    case 'watts':
    case 'ph':
    case 'oxygen-saturation':
    case 'conductivity':
    case 'redox':
    case 'ammonia':
    case 'nitrite':
    case 'nitrate':
    case 'phosphate':
    case 'alkalinity':
    case 'pressure':
    case 'turbidity':
    case 'carbon-dioxide':
    case 'oxidant':
      return lost();
  }
}

/** Signal of a sensor by key; lost when there is no such sensor. */
export function signalOf(system: System, key: string, plant: Plant, places: Places, upset: Upset): Signal {
  const sensor = system.sensors.find((s) => s.key === key);
  return sensor ? sensorSignal(sensor, plant, places, upset) : lost();
}
