import { equipmentThings, type Fault } from '../fault';

/** Heater dead. */
export const fault: Fault = {
  id: 'heater-off',
  row: 'HT2',
  title: 'Heater dead',
  effect: 'It gives no heat though it is told to; the water falls slowly towards the room.',
  source: 'open element, plug out, tripped; common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'equipment',
  states: 'running',
  remedies: ['second-heater', 'watts-alarm', 'low-alarm'],
  things: (_, system) => equipmentThings(system, 'heater'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
