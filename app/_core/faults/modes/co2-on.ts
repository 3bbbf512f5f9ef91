import { equipmentThings, type Fault } from '../fault';

/** The valve stays open, or the regulator dumps at the end of the bottle. */
export const fault: Fault = {
  id: 'co2-on',
  row: 'CR1',
  title: 'Carbon dioxide stuck open',
  effect: 'pH crashes, fish are narcotised and suffocate with oxygen in the water.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['animals'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['ph-stop', 'co2-orifice', 'ph-alarm'],
  things: (_, system) => equipmentThings(system, 'co2'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
