import type { Fault } from '../fault';

/** Days of feed that go in at once. Common practice, no source. */
const DAYS_OF_FEED = 3;

/** Fed twice and more, by staff or by a visitor. */
export const fault: Fault = {
  id: 'overfed',
  row: 'PE8',
  title: 'Overfed',
  effect: 'Days of feed at once: oxygen is short by night, ammonia by the next day.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: ['animals'],
  repair: 'water',
  states: ['normal'],
  remedies: ['count-food', 'oxygen-alarm', 'second-air'],
  things: (_, system) =>
    system.stock.length > 0 && (system.feedGPerDay?.value ?? 0) > 0
      ? [{ kind: 'matter', key: 'feed', name: 'Feed' }]
      : [],
  befall: (upset, _, __, system) => {
    upset.feedDumpedG = DAYS_OF_FEED * (system.feedGPerDay?.value ?? 0);
  },
};
