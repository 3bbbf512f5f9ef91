import { equipmentThings, type Fault } from '../fault';

/** Chiller stops. */
export const fault: Fault = {
  id: 'chiller-off',
  row: 'CH1',
  title: 'Chiller stops',
  effect: 'Nothing takes heat away any more; the water climbs towards the room plus the heat of pumps and lamps.',
  source:
    'lost charge, dirty condenser, high-head trip; a small aquarium in a heat wave (practicalfishkeeping.co.uk, brewery)',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: 'running',
  remedies: ['second-chiller', 'watts-alarm', 'high-alarm'],
  things: (_, system) => equipmentThings(system, 'chiller'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
