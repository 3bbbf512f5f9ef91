import { equipmentThings, type Fault } from '../fault';

/** Part of its flow that a blinded filter still lets through. Common practice, no source. */
const LEFT = 0.3;

/** A filter that blinds or channels. */
export const fault: Fault = {
  id: 'filter-blinds',
  row: 'FL1',
  title: 'Filter blinds',
  effect: 'Less and less water goes through it, and ammonia climbs.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['backwash-on-pressure', 'pressure-alarm', 'ammonia-round'],
  things: (_, system) => equipmentThings(system, 'filter'),
  befall: (upset, thing) => upset.weakened.set(thing.key, LEFT),
};
