import { equipmentThings, type Fault } from '../fault';

/** Part of its heat that one of two elements still gives. Common practice, no source. */
const HALF = 0.5;

/** One of several elements or phases is gone. */
export const fault: Fault = {
  id: 'heater-partly',
  row: 'HT3',
  title: 'Heater gives half its heat',
  effect: 'It holds in summer and loses in winter; how much it still gives shows in its watts.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['second-heater', 'watts-alarm', 'full-load-test', 'low-alarm'],
  things: (_, system) => equipmentThings(system, 'heater'),
  befall: (upset, thing) => upset.weakened.set(thing.key, HALF),
};
