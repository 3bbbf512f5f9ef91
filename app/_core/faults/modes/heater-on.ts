import { equipmentThings, type Fault } from '../fault';

/** Heater welded on. */
export const fault: Fault = {
  id: 'heater-on',
  row: 'HT1',
  title: 'Heater welded on',
  effect:
    'It heats whatever it is told, until something else takes its power away: the water climbs towards the room plus power over heat loss, oxygen falls as demand rises.',
  source:
    'welded contacts are the common end of bimetal and relay (zoopet.com, thread 97351); one home case at dbcaquatics.com',
  threatens: 'warm',
  shows: [],
  repair: 'equipment',
  states: 'running',
  remedies: ['cut-out', 'split-heaters', 'watts-alarm', 'high-alarm'],
  things: (_, system) => equipmentThings(system, 'heater'),
  befall: (upset, thing) => upset.health.set(thing.key, 'stuck-on'),
};
