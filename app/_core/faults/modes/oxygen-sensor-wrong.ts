import { type Fault, watchingSensors } from '../fault';

/** What it goes on showing, in mg/L or in % of saturation: more than any low limit asks for. */
const CALM = 95;

/** A torn membrane, an aged cap. */
export const fault: Fault = {
  id: 'oxygen-sensor-wrong',
  row: 'SE8',
  title: 'Oxygen sensor reads wrong',
  effect: 'False calm: the alarm that counts most stays silent.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['second-sensor', 'calibrate', 'oxygen-round'],
  things: (_, system) => watchingSensors(system, 'oxygen', 'oxygen-saturation'),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'stuck', value: CALM }),
};
