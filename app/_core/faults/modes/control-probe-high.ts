import { type Fault, regulatingProbes } from '../fault';

/** K by which a probe drifts between two checks: half of what was seen side by side. Common practice, no source. */
const DRIFT_K = 1.1;

/** A probe that drifted up. */
export const fault: Fault = {
  id: 'control-probe-high',
  row: 'SE1',
  title: 'Control probe reads too high',
  effect: 'The water is held colder than anybody chose; the reading looks right.',
  source: 'thermometers side by side in one room read 15.5 to 17.7 °C, told by keepers; common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['reference-check', 'probe-difference', 'low-alarm'],
  things: (_, system) => regulatingProbes(system),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'shifted', by: DRIFT_K }),
};
