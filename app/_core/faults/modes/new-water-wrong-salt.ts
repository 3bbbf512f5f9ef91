import { type Fault, stateThings } from '../fault';

/** Practical salinity up to which a system counts as fresh, and of the other line. */
const FRESH = 5;
const SEA = 35;

/** The wrong line, or salt left out. */
export const fault: Fault = {
  id: 'new-water-wrong-salt',
  row: 'WC2',
  title: 'New water from the wrong line',
  effect: 'Fresh water goes into a salt system, or salt water into a fresh one.',
  source: 'half a tank refilled from the salt line (blogs.thatpetplace.com, 2010-05-26)',
  threatens: 'cold',
  shows: [],
  repair: 'water',
  states: ['water-change'],
  remedies: ['hold-and-release', 'fill-check', 'salinity-alarm', 'salinity-round'],
  things: (_, system) =>
    system.states.some((s) => s.name === 'water-change' && (s.drawnL?.value ?? 0) > 0)
      ? stateThings(system, 'water-change')
      : [],
  befall: (upset, _, __, system) => {
    upset.newWater = { salinity: (system.salinity.value ?? 0) > FRESH ? 0 : SEA };
  },
};
