import { equipmentThings, type Fault } from '../fault';

/** A relay that welded, a loop in software. */
export const fault: Fault = {
  id: 'doser-on',
  row: 'DP1',
  title: 'Dosing pump stuck on',
  effect: 'Its container runs into the water: alkalinity and pH climb or fall, and what is dosed falls out.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: [],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['small-container', 'dose-limit', 'ph-stop', 'ph-alarm'],
  things: (_, system) => equipmentThings(system, 'doser'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
