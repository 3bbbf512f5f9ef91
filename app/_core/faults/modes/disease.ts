import type { Uncarried } from '../fault';

/** Net, bucket or hands from quarantine to display. */
export const fault: Uncarried = {
  id: 'disease',
  row: 'PE9',
  title: 'Disease carried between systems',
  effect: 'Animals fall ill and die over days.',
  source: 'common practice, no source',
  carried: false,
  why: 'Disease is not modelled.',
  hazard: 'disease',
  asks: { paper: 'order-of-rounds' },
  concerns: (_, system) => system.stock.length > 0,
};
