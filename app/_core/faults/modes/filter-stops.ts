import { equipmentThings, type Fault } from '../fault';

/** The filter stands still. */
export const fault: Fault = {
  id: 'filter-stops',
  row: 'BF1',
  title: 'Filter stops',
  effect: 'Its bacteria get no water: ammonia climbs, and within hours they die.',
  source: 'a canister off for twelve hours, nitrite 0.25 mg/L (aquariumadvice.com, thread 187799)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['second-filter', 'watts-alarm', 'ammonia-round'],
  things: (_, system) => equipmentThings(system, 'filter'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
