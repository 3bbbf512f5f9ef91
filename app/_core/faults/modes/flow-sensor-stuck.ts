import { type Fault, watchingSensors } from '../fault';

/** L/h that a hanging meter goes on showing: more than any limit asks for. */
const FLOWS = 1e6;

/** A fouled meter, a paddle that hangs. */
export const fault: Fault = {
  id: 'flow-sensor-stuck',
  row: 'SE11',
  title: 'Flow sensor stuck',
  effect: 'It goes on saying that water flows; what is released by it is released without flow.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['watts-range', 'flow-check'],
  things: (_, system) => watchingSensors(system, 'flow'),
  befall: (upset, thing) => upset.probes.set(thing.key, { as: 'stuck', value: FLOWS }),
};
