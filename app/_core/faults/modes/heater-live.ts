import { has, type Uncarried } from '../fault';

/** A cracked or flooded heater. */
export const fault: Uncarried = {
  id: 'heater-live',
  row: 'HT5',
  title: 'Heater cracked, water live',
  effect:
    'People are hurt; metals and burnt plastics reach the water. If its RCD trips, everything behind it stops, which is a case of its own.',
  source: 'common practice, no source',
  carried: false,
  why: 'What current does to people and animals is no matter of mixed water.',
  hazard: 'electric shock from a cracked heater or a lamp in the water',
  asks: { paper: 'electrical-inspection' },
  concerns: (_, system) => has(system, 'heater'),
};
