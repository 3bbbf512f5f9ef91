import { equipmentThings, type Fault } from '../fault';

/** Part of its cooling that a fouled chiller still gives. Common practice, no source. */
const HALF = 0.5;

/** A dirty condenser, little charge, a hot plant room. */
export const fault: Fault = {
  id: 'chiller-weak',
  row: 'CH1',
  title: 'Chiller gives half its cooling',
  effect: 'It runs and is not enough: on a warm day the water follows the room, and no watts tell.',
  source: 'a small aquarium whose chillers were too small for a heat wave (practicalfishkeeping.co.uk, brewery)',
  threatens: 'warm',
  shows: [],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['second-chiller', 'chiller-service', 'high-alarm'],
  things: (_, system) => equipmentThings(system, 'chiller'),
  befall: (upset, thing) => upset.weakened.set(thing.key, HALF),
};
