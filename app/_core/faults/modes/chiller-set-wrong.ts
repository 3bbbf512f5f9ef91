import { type Fault, thingsWhere } from '../fault';

/** K by which a knocked dial is taken to be off. Common practice, no source. */
const KNOCKED_K = 5;

/** The set point of a chiller was knocked. */
export const fault: Fault = {
  id: 'chiller-set-wrong',
  row: 'CH2',
  title: 'Chiller set too low',
  effect: 'It cools to a temperature that nobody chose, by its own measure healthy.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['low-cut-out', 'set-point-cover', 'low-alarm', 'reference-check'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'chiller' && e.plan.regulation.kind === 'thermostat'),
  befall: (upset, thing) => upset.setPointShift.set(thing.key, -KNOCKED_K),
};
