import { equipmentThings, type Fault } from '../fault';

/** A worn tube, a dry container. */
export const fault: Fault = {
  id: 'doser-off',
  row: 'DP3',
  title: 'Dosing stops',
  effect: 'What the animals use is not replaced; alkalinity falls day by day.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: ['level'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['alkalinity-round', 'ph-alarm'],
  things: (_, system) => equipmentThings(system, 'doser'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
