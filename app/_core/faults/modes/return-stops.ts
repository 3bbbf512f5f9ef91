import { equipmentThings, type Fault } from '../fault';

/** Return pump stops. */
export const fault: Fault = {
  id: 'return-stops',
  row: 'RP1',
  title: 'Return pump stops',
  effect:
    'Sump and tanks part: the tanks drain down to their outlets, lose heat source, filter and the air of the sump, and the sump rises.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['second-return', 'air-in-tank', 'watts-alarm', 'flow-alarm'],
  things: (_, system) => equipmentThings(system, 'return-pump'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
