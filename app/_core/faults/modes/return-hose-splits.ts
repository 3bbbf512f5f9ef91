import { DEFAULTS } from '../../equipment/defaults';
import { equipmentThings, type Fault } from '../fault';

/** L/h of a pump that says nothing of its flow. Common practice, no source. */
const PUMP_L_PER_H = 2000;

/** The hose of the return splits outside the water. */
export const fault: Fault = {
  id: 'return-hose-splits',
  row: 'LK1',
  title: 'Hose of the return splits',
  effect: 'The pump empties the sump onto the floor as fast as it would fill the tanks, until it draws air.',
  source: 'LK1; common practice, no source',
  threatens: 'either',
  shows: ['floor', 'level', 'equipment'],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['hose-clamps', 'leak-alarm', 'level-trip', 'flow-alarm'],
  things: (_, system) => equipmentThings(system, 'return-pump'),
  befall: (upset, thing, _, system) => {
    const pump = system.equipment.find((e) => e.key === thing.key);
    const sump = system.tanks.find((t) => t.key === pump?.tank);
    upset.health.set(thing.key, 'no-effect');
    if (!pump || !sump) return;
    const flow = (pump.flowLPerH?.value ?? PUMP_L_PER_H) / 3.6e6;
    upset.leaks.set(sump.key, { flow, depth: (sump.pumpDryMm?.value ?? DEFAULTS.pumpDryMm.value) / 1000 });
  },
};
