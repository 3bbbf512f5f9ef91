import type { Uncarried } from '../fault';

/** Pure oxygen without end. */
export const fault: Uncarried = {
  id: 'oxygen-stuck-open',
  row: 'O21',
  title: 'Oxygen diffuser stuck on',
  effect: 'Oxygen far above saturation, gas in the blood, fire in the room.',
  source: 'common practice, no source',
  carried: false,
  why: 'Pure oxygen is no equipment of a description.',
  hazard: 'pure oxygen: fire, and far too much of it in the water',
  concerns: () => false,
};
