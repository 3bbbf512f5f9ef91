import { type Fault, thingsWhere } from '../fault';
import { fault as like } from './top-off-off';

/** Snail, salt or grease holds it up. */
export const fault: Fault = {
  ...like,
  id: 'level-switch-high',
  row: 'SE9',
  sameAs: like.id,
  title: 'Level switch stuck high',
  effect: 'It never asks for water: the sump falls, its pump draws air.',
  source: 'common practice, no source',
  remedies: ['level-alarm', 'lift-test', 'salinity-round'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'top-off' && e.plan.regulation.kind === 'level'),
};
