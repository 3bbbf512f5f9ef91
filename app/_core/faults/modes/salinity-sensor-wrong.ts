import { type Fault, watchingSensors } from '../fault';

/** A bubble or a film of salt on the cell. */
export const fault: Fault = {
  id: 'salinity-sensor-wrong',
  row: 'SE7',
  title: 'Salinity sensor reads wrong',
  effect: 'It says what it said yesterday: dilution and salting go on unseen.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['second-sensor', 'salinity-round', 'calibrate'],
  things: (_, system) => watchingSensors(system, 'salinity'),
  befall: (upset, thing, _, system) => upset.probes.set(thing.key, { as: 'stuck', value: system.salinity.value ?? 0 }),
};
