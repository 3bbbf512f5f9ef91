import type { Uncarried } from '../fault';

/** One person alone knows how. */
export const fault: Uncarried = {
  id: 'one-person-knows',
  row: 'PE10',
  title: 'Only one person knows how the back-up works',
  effect: 'The means are there and nobody can use them.',
  source: 'a trade article names it among the reasons for dead back-ups; common practice, no source',
  carried: false,
  why: 'What people know is not described.',
  hazard: 'what only one person knows',
  asks: { paper: 'backup-card' },
  concerns: (facility) => facility.site.generator !== undefined || facility.site.powerCut !== undefined,
};
