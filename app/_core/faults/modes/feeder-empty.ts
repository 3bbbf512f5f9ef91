import { has, type Uncarried } from '../fault';

/** Nothing in the hopper. */
export const fault: Uncarried = {
  id: 'feeder-empty',
  row: 'AF2',
  title: 'Feeder empty or jammed',
  effect: 'Only fry, seahorses, jellies and live food starve soon.',
  source: 'common practice, no source',
  carried: false,
  why: 'Hunger is not modelled; the rounds see it.',
  concerns: (_, system) => has(system, 'feeder'),
};
