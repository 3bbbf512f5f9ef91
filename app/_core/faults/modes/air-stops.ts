import { equipmentThings, type Fault } from '../fault';

/** Air blower stops. */
export const fault: Fault = {
  id: 'air-stops',
  row: 'AB1',
  title: 'Air blower stops',
  effect: 'Its stones fall silent: oxygen falls to what surface, stirring and sump still carry.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['second-air', 'oxygen-alarm', 'watts-alarm'],
  things: (_, system) => equipmentThings(system, 'air-blower'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
