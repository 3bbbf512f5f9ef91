import { equipmentThings, type Fault } from '../fault';

/** The controlling probe reads low, or nothing holds it back. */
export const fault: Fault = {
  id: 'ozone-on',
  row: 'OZ1',
  title: 'Ozone at full output',
  effect: 'Residual oxidant builds up in the water: gills are burnt, animals die within hours.',
  source: '15 bonnethead sharks of a zoo (wthr.com, 9703381)',
  threatens: 'either',
  shows: ['animals'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['ozone-two-probes', 'ozone-size', 'oxidant-alarm', 'manual-restart'],
  things: (_, system) => equipmentThings(system, 'ozone'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
