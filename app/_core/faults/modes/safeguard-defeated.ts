import type { Uncarried } from '../fault';

/** A float tied up, a cut-out bridged, an alarm muted. */
export const fault: Uncarried = {
  id: 'safeguard-defeated',
  row: 'PE7',
  title: 'Safeguard defeated for convenience',
  effect: 'Whatever it held back comes through.',
  source: 'common practice, no source',
  carried: false,
  why: 'Each fault is also judged with the untested safeguards absent, and with each one dead.',
  asks: { rule: 'safeguard-off' },
  concerns: (facility, system) => system.safeguards.length + facility.safeguards.length > 0,
};
