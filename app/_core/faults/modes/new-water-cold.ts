import { type Fault, stateThings } from '../fault';

/** °C of the mains where nothing is said of it: a cold month. Common practice, no source. */
const MAINS_C = 8;

/** Unheated new water. */
export const fault: Fault = {
  id: 'new-water-cold',
  row: 'WC2',
  title: 'New water too cold',
  effect: 'The water that goes back is as cold as the mains: the whole system drops at once.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: [],
  repair: 'water',
  states: ['water-change'],
  remedies: ['hold-and-release', 'low-alarm'],
  things: (_, system) =>
    system.states.some((s) => s.name === 'water-change' && (s.drawnL?.value ?? 0) > 0)
      ? stateThings(system, 'water-change')
      : [],
  befall: (upset, _, facility) => {
    upset.newWater = { temperatureC: facility.site.mains?.temperatureC?.value ?? MAINS_C };
  },
};
