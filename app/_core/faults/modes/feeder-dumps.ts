import { type Fault, thingsWhere } from '../fault';

/** Moisture, a jam, a timer that fires twice. */
export const fault: Fault = {
  id: 'feeder-dumps',
  row: 'AF1',
  title: 'Feeder dumps its hopper',
  effect: 'All of it falls in at once: oxygen is short by night, ammonia by the next day.',
  source: 'common practice, no source',
  threatens: 'warm',
  shows: ['animals'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['small-hopper', 'oxygen-alarm', 'second-air'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'feeder' && (e.hopperG?.value ?? 0) > 0),
  befall: (upset, thing, _, system) => {
    upset.feedDumpedG += system.equipment.find((e) => e.key === thing.key)?.hopperG?.value ?? 0;
  },
};
