import { circuitsOf, type Fault } from '../fault';

/** A breaker trips. */
export const fault: Fault = {
  id: 'circuit-trips',
  row: 'PW3',
  title: 'Circuit trips',
  effect: 'Everything on it stops together and stays off until somebody resets it.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'circuit',
  states: 'running',
  remedies: ['split-circuits', 'circuit-alarm', 'second-air'],
  things: (facility, system) => circuitsOf(facility, system).map(({ key, name }) => ({ kind: 'circuit', key, name })),
  befall: (upset, thing) => upset.deadCircuits.add(thing.key),
};
