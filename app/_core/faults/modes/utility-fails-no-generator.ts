import type { Fault } from '../fault';

/** The utility fails and the generator does not start. */
export const fault: Fault = {
  id: 'utility-fails-no-generator',
  row: 'PW6',
  title: 'Utility fails and the generator does not start',
  effect: 'The stand-by that everybody counts on is the second failure: only batteries are left.',
  source: 'a hatchery whose generator batteries had not been charging (keypennews.org, stories 2366)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'utility',
  states: 'running',
  remedies: ['generator-test', 'backed-air', 'power-cut-means'],
  things: (facility) =>
    facility.site.generator ? [{ kind: 'site', key: facility.site.key, name: facility.site.name }] : [],
  befall: (upset) => {
    upset.utilityDown = true;
    upset.generatorFails = true;
  },
};
