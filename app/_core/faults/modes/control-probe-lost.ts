import { type Fault, regulatingProbes } from '../fault';

/** Control probe lost. */
export const fault: Fault = {
  id: 'control-probe-lost',
  row: 'SE4',
  title: 'Control probe lost',
  effect: 'Nothing usable comes from it; the equipment does what its plan says for lost sensing, or goes on as it was.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: 'running',
  remedies: ['lost-sensing', 'second-probe', 'cut-out', 'high-alarm', 'low-alarm'],
  things: (_, system) => regulatingProbes(system),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'lost' }),
};
