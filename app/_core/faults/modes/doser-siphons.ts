import { equipmentThings, type Fault } from '../fault';

/** The tube splits, or a check valve is lost. */
export const fault: Fault = {
  id: 'doser-siphons',
  row: 'DP2',
  title: 'Dosing line siphons',
  effect: 'The container runs empty without power: no switch and no watts tell.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['level'],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['small-container', 'vacuum-break', 'ph-alarm'],
  things: (_, system) => equipmentThings(system, 'doser'),
  befall: (upset, thing) => upset.siphoning.add(thing.key),
};
