import { equipmentThings, type Fault } from '../fault';

/** Practical salinity up to which a system counts as fresh; what a fresh one gets by the wrong line. Common practice, no source. */
const FRESH = 5;
const SALT = 15;

/** Fresh water after rain, cold upwelling, the wrong line. */
export const fault: Fault = {
  id: 'supply-brings-wrong',
  row: 'IN2',
  title: 'Supply brings the wrong water',
  effect: 'The whole site gets water it cannot live in, as fast as it is supplied.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'water',
  states: ['normal'],
  remedies: ['divert', 'salinity-alarm', 'low-alarm', 'second-supply'],
  things: (_, system) => equipmentThings(system, 'supply'),
  befall: (upset, thing, _, system) => {
    const kept = system.salinity.value ?? 0;
    upset.brings.set(thing.key, { salinity: kept > FRESH ? kept / 2 : SALT });
  },
};
