import { equipmentThings, type Fault } from '../fault';

/** Skimmer stops. */
export const fault: Fault = {
  id: 'skimmer-stops',
  row: 'SK2',
  title: 'Skimmer stops',
  effect: 'In many marine systems it is the main exchange of gas: oxygen falls, most of all at night.',
  source: 'measured in one reef (reefkeeping.com, 2005-08)',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['second-air', 'oxygen-alarm', 'watts-alarm'],
  things: (_, system) => equipmentThings(system, 'skimmer'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
