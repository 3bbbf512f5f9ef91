import type { Fault } from '../fault';

/** The utility fails and stays away; batteries and generator do what is counted on. */
export const fault: Fault = {
  id: 'utility-fails',
  row: 'PW1',
  title: 'Utility fails',
  effect: 'Everything stops but what a battery or the generator carries, for as long as it carries it.',
  source: 'an aquarium whose generator carried circulation but no heat (news.bbc.co.uk 6186157)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'utility',
  states: 'running',
  remedies: ['backed-air', 'generator', 'power-cut-means'],
  things: (facility) => [{ kind: 'site', key: facility.site.key, name: facility.site.name }],
  befall: (upset) => {
    upset.utilityDown = true;
  },
};
