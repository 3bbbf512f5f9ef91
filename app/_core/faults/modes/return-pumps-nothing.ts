import { equipmentThings, type Fault } from '../fault';

/** Return pump runs but moves nothing. */
export const fault: Fault = {
  id: 'return-pumps-nothing',
  row: 'RP2',
  title: 'Return pump runs but moves nothing',
  effect:
    'As when it stops, but its plug still shows power: a slipped coupling, a lost impeller, an air lock, a shut valve.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['flow-alarm', 'watts-range', 'second-return', 'air-in-tank'],
  things: (_, system) => equipmentThings(system, 'return-pump'),
  befall: (upset, thing) => upset.health.set(thing.key, 'no-effect'),
};
