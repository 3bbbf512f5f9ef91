import { circuitsOf, type Fault } from '../fault';

/** The batteries are aged. */
export const fault: Fault = {
  id: 'utility-fails-no-battery',
  row: 'PW5',
  title: 'Utility fails and the batteries carry nothing',
  effect: 'Backed up for minutes instead of hours: what counts on a battery stops with the rest.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'utility',
  states: ['normal'],
  remedies: ['battery-test', 'generator', 'power-cut-means'],
  things: (facility, system) =>
    circuitsOf(facility, system).some((c) => c.backedBy.includes('ups'))
      ? [{ kind: 'site', key: facility.site.key, name: facility.site.name }]
      : [],
  befall: (upset) => {
    upset.utilityDown = true;
    upset.batteriesFail = true;
  },
};
