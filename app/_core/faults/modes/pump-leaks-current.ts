import type { EquipmentType } from '../../facility/system';
import type { Fault } from '../fault';
import { fault as like } from './rcd-trips';

/** What has a motor in or under the water. */
const PUMPS: readonly EquipmentType[] = ['return-pump', 'circulation-pump', 'skimmer', 'filter', 'top-off'];

/** A shaft seal lets water to the winding. */
export const fault: Fault = {
  id: 'pump-leaks-current',
  row: 'RP6',
  sameAs: like.id,
  title: 'Pump leaks current and trips its RCD',
  effect: 'Everything behind the same RCD goes dead with it and does not come back by itself.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'circuit',
  states: 'running',
  remedies: ['split-rcd', 'circuit-alarm', 'second-air'],
  things: (facility, system) => {
    const pumps = system.equipment.filter((e) => PUMPS.includes(e.type)).map((e) => e.circuit);
    const rcds = facility.circuits.filter((c) => pumps.includes(c.key)).map((c) => c.rcd);
    return like.things(facility, system).filter(({ key }) => rcds.includes(key));
  },
  befall: like.befall,
};
