import type { Uncarried } from '../fault';

/** W from which a machine is taken to run on three phases. Common practice, no source. */
const THREE_PHASE_W = 2000;

/** Brown-out, or one of three phases. */
export const fault: Uncarried = {
  id: 'phase-lost',
  row: 'PW2',
  title: 'One phase lost, or low voltage',
  effect: 'Motors stall hot, contactors chatter: half the room is on.',
  source: 'common practice, no source',
  carried: false,
  why: 'A description does not say what hangs on which phase.',
  hazard: 'low voltage and a lost phase',
  asks: { paper: 'phase-protection' },
  concerns: (_, system) => system.equipment.some((e) => (e.ratedW?.value ?? 0) >= THREE_PHASE_W),
};
