import { type Fault, watchingSensors } from '../fault';

/** Command is not fact. */
export const fault: Fault = {
  id: 'power-meter-wrong',
  row: 'SE12',
  title: 'Power meter reads wrong',
  effect: 'A relay that is open or welded looks as it should.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['flow-alarm', 'second-sensor'],
  things: (_, system) => watchingSensors(system, 'watts'),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'lost' }),
};
