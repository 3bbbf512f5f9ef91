import { has, type Uncarried } from '../fault';

/** Water runs back up an air line. */
export const fault: Uncarried = {
  id: 'air-line-siphons',
  row: 'AB3',
  title: 'Water siphons back through the air line',
  effect: 'A blower that hangs below the water drowns when it stops, and the tank runs out through it.',
  source: 'common practice, no source',
  carried: false,
  why: 'A description does not say how high a blower hangs; that it stops is a case of its own.',
  hazard: 'water siphoned back through air lines',
  asks: { paper: 'air-intake' },
  concerns: (_, system) => has(system, 'air-blower'),
};
