import { equipmentThings, type Fault } from '../fault';

/** The air line of a skimmer is salted up. */
export const fault: Fault = {
  id: 'skimmer-no-air',
  row: 'SK3',
  title: 'Skimmer runs without air',
  effect: 'As a skimmer that stops, while its plug still shows power.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['second-air', 'venturi-clean', 'oxygen-alarm'],
  things: (_, system) => equipmentThings(system, 'skimmer'),
  befall: (upset, thing) => upset.health.set(thing.key, 'no-effect'),
};
