import { type Fault, stateThings } from '../fault';

/** mg/L of chlorine in the mains where nothing is said of it. Common practice, no source. */
const MAINS_MG_L = 1;

/** New water straight from the mains. */
export const fault: Fault = {
  id: 'new-water-chlorinated',
  row: 'WC2',
  title: 'New water not dechlorinated',
  effect: 'The mains’ disinfectant goes in with the new water: gills are burnt within minutes to hours.',
  source: 'koi in a pond of 94,600 L that took 40 % of new tap water (austinponddoctor.com)',
  threatens: 'either',
  shows: [],
  repair: 'water',
  states: ['water-change'],
  remedies: ['hold-and-release', 'chlorine-test', 'oxidant-alarm'],
  things: (facility, system) =>
    facility.site.mains && system.states.some((s) => s.name === 'water-change' && (s.drawnL?.value ?? 0) > 0)
      ? stateThings(system, 'water-change')
      : [],
  befall: (upset, _, facility) => {
    upset.newWater = { oxidantMgL: facility.site.mains?.oxidantMgL?.value ?? MAINS_MG_L };
  },
};
