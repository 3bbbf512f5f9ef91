import type { Fault } from '../fault';

/** The pause for feeding is not ended by whoever or whatever should. */
export const fault: Fault = {
  id: 'feeding-never-ends',
  row: 'PE2',
  title: 'Feeding pause never ended',
  effect: 'What was paused for a few minutes stays off: no flow, often no skimmer, sump and tanks apart.',
  source: 'a filter left off for twelve hours after feeding (aquariumadvice.com, thread 187799)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'state',
  states: ['feeding'],
  remedies: ['pause-timer', 'state-alarm', 'air-in-pause'],
  things: (_, system) => {
    const paused = system.equipment.some((e) =>
      e.plan.states.some((line) => line.state === 'feeding' && line.then === 'off'),
    );
    return paused ? [{ kind: 'state', key: 'feeding', name: 'feeding' }] : [];
  },
  befall: (upset) => {
    upset.stateNeverEnds = true;
  },
};
