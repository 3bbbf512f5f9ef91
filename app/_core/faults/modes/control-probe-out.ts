import { type Fault, regulatingProbes } from '../fault';

/** Control probe out of the water. */
export const fault: Fault = {
  id: 'control-probe-out',
  row: 'SE2',
  title: 'Control probe out of the water',
  effect: 'It reads the room: a heater heats without end in a cool room, a chiller never starts.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'sensor',
  states: 'running',
  remedies: ['second-probe', 'cut-out', 'high-alarm', 'low-alarm'],
  things: (_, system) => regulatingProbes(system),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'air' }),
};
