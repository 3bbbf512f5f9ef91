import { equipmentThings, type Fault } from '../fault';

/** Spent carbon, or a dosing pump without power. */
export const fault: Fault = {
  id: 'dechlorination-stops',
  row: 'CA1',
  title: 'Dechlorination stops',
  effect: 'The mains’ disinfectant goes straight into whatever is filled or supplied.',
  source: 'more than 9,000 fish of a university in one night (ualberta.ca, 2017-05)',
  threatens: 'either',
  shows: [],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['fail-shut', 'second-dechlorinator', 'chlorine-test', 'oxidant-alarm'],
  things: (_, system) => equipmentThings(system, 'dechlorinator'),
  befall: (upset, thing) => {
    upset.health.set(thing.key, 'dead');
    upset.mainsOxidantPasses = 1;
  },
};
