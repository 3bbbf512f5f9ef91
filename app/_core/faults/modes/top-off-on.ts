import { equipmentThings, type Fault } from '../fault';

/** mm: a float that hangs reads as low as can be. */
const HANGING = -10_000;

/** The level switch sticks low, so that the top-off goes on; without one, its own contact has welded. */
export const fault: Fault = {
  id: 'top-off-on',
  row: 'AT1',
  title: 'Top-off stuck on',
  effect:
    'Its level switch reads low for ever: fresh water goes in until the reservoir is empty, a limit stops it, or the floor is wet. Salinity falls.',
  source: 'a float stuck and 57 L went in before a second one stopped it (packedhead.net/p237)',
  threatens: 'either',
  shows: [],
  repair: 'equipment',
  states: 'running',
  remedies: ['run-limit', 'high-level-lock', 'small-reservoir', 'leak-alarm'],
  things: (_, system) => equipmentThings(system, 'top-off'),
  befall: (upset, thing, _, system) => {
    const line = system.equipment.find((e) => e.key === thing.key)?.plan.regulation;
    if (line?.kind === 'level') upset.probes.set(line.sensor, { as: 'stuck', value: HANGING });
    else upset.health.set(thing.key, 'stuck-on');
  },
};
