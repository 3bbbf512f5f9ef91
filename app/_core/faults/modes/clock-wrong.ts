import { type Fault, thingsWhere } from '../fault';

/** s: the worst a clock of twelve hours can be off. */
const HALF_A_DAY_S = 43_200;

/** A dead cell, or a clock set by half a day. */
export const fault: Fault = {
  id: 'clock-wrong',
  row: 'NW5',
  title: 'Clock of the timers is wrong',
  effect: 'Night and day change places: lamps, doses and feeding come at the wrong hour.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'state',
  states: ['normal'],
  remedies: ['clock-sync', 'oxygen-alarm'],
  things: (_, system) =>
    thingsWhere(system, (e) => e.plan.regulation.kind === 'hours').length > 0
      ? [{ kind: 'matter', key: 'clock', name: 'Clock' }]
      : [],
  befall: (upset) => {
    upset.clockOffS = HALF_A_DAY_S;
  },
};
