import { type Fault, thingsWhere } from '../fault';

/** A supply that no longer closes. */
export const fault: Fault = {
  id: 'supply-stuck-open',
  row: 'SV1',
  title: 'Supply stuck open',
  effect: 'Whatever it brings comes without end.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['level'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['two-valves', 'level-alarm', 'leak-alarm', 'salinity-round'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'supply' && e.plan.regulation.kind !== 'always'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
