import type { Uncarried } from '../fault';

/** Everything and its alarm on one strip. */
export const fault: Uncarried = {
  id: 'all-on-one-strip',
  row: 'PW10',
  title: 'Alarm gateway on the strip that it should report',
  effect: 'Everything stops and nobody is told.',
  source: 'common practice, no source',
  carried: false,
  why: 'It is one circuit going dead, which is a case of its own; the wiring is checked as well.',
  asks: { rule: 'monitor-on-watched-circuit' },
  concerns: (facility) => facility.monitors.length > 0,
};
