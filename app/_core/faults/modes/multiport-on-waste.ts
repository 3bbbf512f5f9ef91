import { equipmentThings, type Fault } from '../fault';
import { fault as like } from './waste-open';

/** A multiport valve between positions or left on waste. */
export const fault: Fault = {
  ...like,
  id: 'multiport-on-waste',
  row: 'FL2',
  sameAs: like.id,
  title: 'Multiport valve left on waste',
  effect: 'The filter pumps to the drain: the sump falls, the return draws air.',
  source: 'common practice, no source',
  remedies: ['level-trip', 'level-alarm', 'state-timer'],
  things: (_, system) => equipmentThings(system, 'filter'),
};
