import { type Fault, watchingSensors } from '../fault';

/** Dry joint, dead battery, mopped and moved. */
export const fault: Fault = {
  id: 'leak-sensor-dead',
  row: 'SE10',
  title: 'Leak sensor dead',
  effect: 'The next flood is not seen.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['wet-test', 'second-sensor'],
  things: (_, system) => watchingSensors(system, 'leak'),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'stuck', value: 0 }),
};
