import { equipmentThings, type Fault } from '../fault';

/** Circulation pump stops. */
export const fault: Fault = {
  id: 'circulation-stops',
  row: 'CP1',
  title: 'Circulation pump stops',
  effect: 'Dead spots, and little gas exchange at the surface.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['second-air', 'watts-alarm', 'oxygen-alarm'],
  things: (_, system) => equipmentThings(system, 'circulation-pump'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
