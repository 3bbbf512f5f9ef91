import { has, type Uncarried } from '../fault';

/** A dead lamp, dirty quartz. */
export const fault: Uncarried = {
  id: 'uv-weak',
  row: 'UV2',
  title: 'UV lamp dead or dirty',
  effect: 'Nothing keeps pathogens down any more, and nothing tells.',
  source: 'common practice, no source',
  carried: false,
  why: 'Disease is not modelled.',
  hazard: 'disease',
  asks: { paper: 'lamp-hours' },
  concerns: (_, system) => has(system, 'uv'),
};
