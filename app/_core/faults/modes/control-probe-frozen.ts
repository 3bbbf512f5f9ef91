import { type Fault, regulatingProbes } from '../fault';

/** K beyond its set point at which it stands. Common practice, no source. */
const BEYOND_K = 0.05;

/** The reading stands still while the heater or chiller is called for. */
export const fault: Fault = {
  id: 'control-probe-frozen',
  row: 'SE3',
  title: 'Control probe frozen',
  effect: 'It goes on calling for heat, or for cold, and an alarm on the same probe sees nothing.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'sensor',
  states: ['normal'],
  remedies: ['frozen-alarm', 'second-probe', 'cut-out', 'high-alarm'],
  things: (_, system) => regulatingProbes(system),
  befall: (upset, thing, _, system) => {
    for (const { type, plan } of system.equipment) {
      const { regulation } = plan;
      if (regulation.kind !== 'thermostat' || !regulation.sensors.includes(thing.key)) continue;
      const value = type === 'chiller' ? regulation.highC + BEYOND_K : regulation.lowC - BEYOND_K;
      // A heater on the same probe is the more dangerous half.
      if (type === 'heater' || !upset.probes.has(thing.key)) upset.probes.set(thing.key, { as: 'stuck', value });
    }
  },
};
