import { type Fault, thingsWhere } from '../fault';

/** Part of the air that still reaches the stones. Common practice, no source. */
const LEFT = 0.2;

/** One open end robs the ring. */
export const fault: Fault = {
  id: 'air-line-splits',
  row: 'AB2',
  title: 'Air line splits',
  effect: 'Air takes the easy way out: the far tanks lose it first, while the blower runs as ever.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['ring-main', 'pressure-alarm', 'second-air', 'oxygen-alarm'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'air-blower' && (e.stones?.length ?? 0) > 1),
  befall: (upset, thing) => upset.weakened.set(thing.key, LEFT),
};
