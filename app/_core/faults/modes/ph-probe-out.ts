import { type Fault, phProbes } from '../fault';

/** What a dry probe reads: about its own zero. From memory. */
const DRY_PH = 7;

/** A pH probe in air or dry: it reads about neutral, whatever the water does. */
export const fault: Fault = {
  id: 'ph-probe-out',
  row: 'CR2',
  title: 'pH probe out of the water',
  effect: 'What listens to it doses without end, or never.',
  source: 'CO2 ran all night on a dry probe, pH 6.7 to 5.9 (fins.actwin.com, month.200504, msg00223)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['second-ph-probe', 'dose-limit', 'ph-alarm', 'frozen-alarm'],
  things: (_, system) => phProbes(system),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'stuck', value: DRY_PH }),
};
