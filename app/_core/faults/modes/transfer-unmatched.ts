import type { Uncarried } from '../fault';

/** Animals moved without matching the water. */
export const fault: Uncarried = {
  id: 'transfer-unmatched',
  row: 'PE5',
  title: 'Animals moved into unmatched water',
  effect: 'Shock: 2 °C below the least they bear killed three sharks.',
  source: 'three blacktip reef sharks (practicalfishkeeping.co.uk, sharks died from cold)',
  carried: false,
  why: 'What comes in tomorrow, and from what water, is not described.',
  hazard: 'transfers between unlike waters',
  asks: { paper: 'transfer' },
  concerns: (_, system) => system.kind === 'quarantine' || system.tanks.some((t) => t.role === 'quarantine'),
};
