import { type Fault, thingsWhere } from '../fault';

/** K by which a knocked dial is taken to be off: a hand’s width of turn. Common practice, no source. */
const KNOCKED_K = 5;

/** The dial was knocked, or reads wrong. */
export const fault: Fault = {
  id: 'heater-set-wrong',
  row: 'HT6',
  title: 'Heater set too high',
  effect: 'It holds a temperature that nobody chose, by its own measure healthy: no watts and no duty looks wrong.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: [],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['cut-out', 'set-point-cover', 'high-alarm', 'reference-check'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'heater' && e.plan.regulation.kind === 'thermostat'),
  befall: (upset, thing) => upset.setPointShift.set(thing.key, KNOCKED_K),
};
