import type { Uncarried } from '../fault';

/** Floor drain or pit pump. */
export const fault: Uncarried = {
  id: 'floor-drain-blocked',
  row: 'DR1',
  title: 'Floor drain blocked, or pit pump fails',
  effect: 'Small leaks become floods of the plant room.',
  source: 'common practice, no source',
  carried: false,
  why: 'A description has no floor drain.',
  hazard: 'floods where a floor drain is blocked',
  asks: { paper: 'floor-drain' },
  concerns: (_, system) => system.tanks.some((t) => t.role === 'sump'),
};
