import { type Fault, thingsWhere } from '../fault';

/** A float valve or solenoid on the mains. */
export const fault: Fault = {
  id: 'mains-fill-stuck',
  row: 'AT6',
  title: 'Fill from the mains stuck open',
  effect: 'Fresh and chlorinated water without end: no limit of a controller closes a valve that is stuck.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['day-tank', 'two-valves', 'high-level-lock', 'leak-alarm'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'top-off' && e.source === 'mains'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
