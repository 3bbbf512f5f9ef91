import { type Fault, phProbes } from '../fault';

/** pH by which a probe ages between two calibrations. Common practice, no source. */
const DRIFT_PH = 0.3;

/** A pH probe that aged. */
export const fault: Fault = {
  id: 'ph-probe-drifts',
  row: 'SE5',
  title: 'pH probe reads too high',
  effect: 'What it holds back goes on longer: the water grows more acid than it shows.',
  source: 'new probes shifted 0.2 to 0.3 within a day, told by keepers; common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['calibrate', 'second-ph-probe', 'ph-alarm'],
  things: (_, system) => phProbes(system),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'shifted', by: DRIFT_PH }),
};
