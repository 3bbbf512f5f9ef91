import { equipmentThings, type Fault } from '../fault';

/** Chiller stuck on. */
export const fault: Fault = {
  id: 'chiller-on',
  row: 'CH2',
  title: 'Chiller stuck on',
  effect: 'It cools whatever it is told, down to what its power can hold below the room.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'equipment',
  states: 'running',
  remedies: ['low-cut-out', 'watts-alarm', 'low-alarm'],
  things: (_, system) => equipmentThings(system, 'chiller'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
