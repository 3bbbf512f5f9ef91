import { type Fault, tankThings } from '../fault';
import { fault as like } from './tank-leaks';

/** A fitting of a loop without overflow. */
export const fault: Fault = {
  ...like,
  id: 'closed-loop-opens',
  row: 'CL1',
  sameAs: like.id,
  title: 'Fitting of a closed loop fails',
  effect: 'The display drains through it with no overflow to stop it.',
  source: 'common practice, no source',
  remedies: ['hose-clamps', 'leak-alarm', 'level-alarm', 'level-trip'],
  things: (_, system) => {
    const stirred = new Set(system.equipment.filter((e) => e.type === 'circulation-pump').map((e) => e.tank));
    return tankThings(system, (t) => t.role === 'display' && stirred.has(t.key));
  },
};
