import { has, type Uncarried } from '../fault';

/** Carbon dioxide leaks into a small room. */
export const fault: Uncarried = {
  id: 'co2-in-room',
  row: 'CR3',
  title: 'Carbon dioxide leaks into the room',
  effect: 'People suffocate without a smell to warn them.',
  source: 'common practice, no source',
  carried: false,
  why: 'The air of rooms is modelled for its warmth alone.',
  hazard: 'gas in the room: carbon dioxide, ozone',
  asks: { paper: 'gas-in-room' },
  concerns: (_, system) => has(system, 'co2', 'ozone'),
};
