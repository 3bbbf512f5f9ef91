import { type Fault, thingsWhere } from '../fault';

/** The timer of the lamps fails closed. */
export const fault: Fault = {
  id: 'light-on',
  row: 'LT1',
  title: 'Lights stay on',
  effect: 'Day without end: stress and algae, and their heat is in the water all night.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['lamp-check', 'high-alarm'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'light' && e.plan.regulation.kind === 'hours'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
