import type { Uncarried } from '../fault';

/** L from which a tank wants an engineer’s eye. Common practice, no source. */
const LARGE_L = 2000;

/** Structural failure. */
export const fault: Uncarried = {
  id: 'tank-bursts',
  row: 'LK2',
  title: 'Tank bursts',
  effect: 'Everything is lost within seconds, people are in danger, neighbours lose their power.',
  source: 'a cylinder of 1,000,000 L burst at 05:45 (nationalworld.com, 2022-12)',
  carried: false,
  why: 'It is a matter for an engineer’s inspection.',
  hazard: 'a tank that bursts',
  asks: { paper: 'structure' },
  concerns: (_, system) => system.tanks.some((t) => (t.volumeL.value ?? 0) >= LARGE_L),
};
