import type { Fault } from '../fault';
import { fault as like } from './heater-off';

/** An element above the water, or in water that stands still. */
export const fault: Fault = {
  ...like,
  id: 'heater-runs-dry',
  row: 'HT4',
  sameAs: like.id,
  title: 'Heater runs dry and cracks',
  effect:
    'Out of the water, or in a sump that stands still, the element cracks or its own thermostat reads a pocket; it gives no heat any more, and its water may be live.',
  source: 'common practice, no source',
  remedies: ['flow-interlock', 'level-alarm', 'second-heater', 'low-alarm'],
};
