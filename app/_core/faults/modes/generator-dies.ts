import { circuitsOf, type Fault } from '../fault';

/** s after the utility failed at which it stops: after everybody has gone. Common practice, no source. */
const DIES_AFTER_S = 4 * 3600;

/** It overheats, its filter clogs, its fuel is foul. */
export const fault: Fault = {
  id: 'generator-dies',
  row: 'PW6',
  title: 'Generator starts and dies again',
  effect: 'Everybody has seen it run and gone home: the second failure comes hours after the first.',
  source: 'an air filter that clogged while nobody was there, up to 10,000 fish (starnewsonline.com, 2006-01-03)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'utility',
  states: ['normal'],
  remedies: ['stay-with-generator', 'generator-test', 'backed-air', 'power-cut-means'],
  things: (facility, system) =>
    facility.site.generator && circuitsOf(facility, system).some((c) => c.backedBy.includes('generator'))
      ? [{ kind: 'site', key: facility.site.key, name: facility.site.name }]
      : [],
  befall: (upset) => {
    upset.utilityDown = true;
    upset.generatorDiesS = DIES_AFTER_S;
  },
};
