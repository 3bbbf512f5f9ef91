import type { Fault } from '../fault';
import { fault as like } from './overflow-blocked';

/** Jellies or rays lie on the outlet screen. */
export const fault: Fault = {
  ...like,
  id: 'screen-blocked',
  row: 'CL2',
  sameAs: like.id,
  title: 'Outlet screen blocked by animals',
  effect: 'Water rises and spills, and the animal on the screen is crushed.',
  source: 'common practice, no source',
  remedies: ['second-overflow', 'small-sump', 'leak-alarm', 'level-alarm'],
  things: (facility, system) => (system.kind === 'jelly' || system.kind === 'ray' ? like.things(facility, system) : []),
};
