import type { PhScale, Sensor, System } from '../facility/system';
import type { ProbeFault, Upset } from '../faults/upset';
import { conductivity, dissolved, freeCarbonDioxide, oxygenSaturationPct, phOfNode } from './laws-of-state';
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
  return linear(plant.layout.floor, 1000, 0);
}

/** What a sensor's own place shows under an upset, at once. Flow, watts and what else is no number of the state reads as lost here. */
export function sensorSignal(system: System, sensor: Sensor, plant: Plant, places: Places, upset: Upset): Signal {
  const fault = upset.probes.get(sensor.key);
  if (fault?.as === 'lost') return lost();
  if (fault?.as === 'stuck') return constant(fault.value);
  if (fault?.as === 'air' && sensor.quantity === 'temperature') return inAir();
  const node = places.node(sensor.tank);
  if (sensor.quantity === 'leak') return floorSignal(plant);
  if (node < 0) return lost();
  return healthy(sensor, sensor.phScale ?? system.phScale ?? 'nbs', plant, node, shiftOf(fault));
}

function shiftOf(fault: ProbeFault | undefined): number {
  return fault?.as === 'shifted' ? fault.by : 0;
}

function healthy(sensor: Sensor, scale: PhScale, plant: Plant, node: number, shift: number): Signal {
  switch (sensor.quantity) {
    case 'temperature':
      return linear(STRIDE * node + TEMPERATURE, 1, shift);
    case 'level':
      return levelSignal(plant, node, shift);
    case 'salinity':
      return salinity(node, plant.density, shift);
    case 'oxygen':
      return linear(STRIDE * node + OXYGEN, 1, shift);
    case 'oxygen-saturation':
      return oxygenSaturationPct(plant, node, shift);
    case 'conductivity':
      return conductivity(plant, node, shift, sensor.compensatedToC);
    case 'ammonia':
      return dissolved(plant, node, 'ammonia', 1, shift);
    case 'alkalinity':
      return dissolved(plant, node, 'alkalinity', 1, shift);
    case 'oxidant':
      return dissolved(plant, node, 'oxidant', 1, shift);
    case 'ph':
      return phOfNode(plant, node, scale, shift);
    case 'carbon-dioxide':
      return freeCarbonDioxide(plant, node, shift);
    case 'leak':
      return floorSignal(plant);
    case 'flow':
    case 'watts':
    case 'redox':
    case 'nitrite':
    case 'nitrate':
    case 'phosphate':
    case 'pressure':
    case 'turbidity':
      return lost();
  }
}

/** What a sensor reports: at once or, where it lags, what it has come to show; lost when there is no such sensor. */
export function signalOf(system: System, key: string, plant: Plant, places: Places, upset: Upset): Signal {
  const sensor = system.sensors.find((s) => s.key === key);
  if (!sensor) return lost();
  const direct = sensorSignal(system, sensor, plant, places, upset);
  const lag = plant.layout.lagging.indexOf(key);
  return lag < 0 || direct.kind === 'lost' || direct.kind === 'constant' ? direct : linear(plant.layout.probes + lag);
}
