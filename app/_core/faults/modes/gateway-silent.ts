import type { Fault } from '../fault';

/** A gateway, the router or Holdfast's own host falls silent. */
export const fault: Fault = {
  id: 'gateway-silent',
  row: 'NW1',
  title: 'Gateway silent',
  effect: 'The water is as before, but no alarm that travels this way reaches anybody.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'monitor',
  states: 'running',
  remedies: ['outside-watch', 'gateway-power'],
  things: (facility) => facility.monitors.map(({ key, name }) => ({ kind: 'gateway', key, name })),
  befall: (upset, thing) => upset.deadMonitors.add(thing.key),
};
