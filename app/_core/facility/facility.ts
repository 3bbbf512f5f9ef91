import type { Person, Shift } from '../rota/rota';
import type { RoundSheet } from '../rounds/round-sheet';
import type { RoundSlot } from '../rounds/slot';
import type { Safeguard } from '../plans/safeguard';
import type { Circuit, Monitor, Room, Site } from './site';
import type { ToleranceProfile } from './stock';
import type { System } from './system';

export const FACILITY_FORMAT = 'holdfast.facility/1';

/** A whole site as described in a facility file: the input of every review. References are by `key`. */
export interface Facility {
  format: typeof FACILITY_FORMAT;
  site: Site;
  rooms: Room[];
  circuits: Circuit[];
  monitors: Monitor[];
  /** Site-level safeguards: generator, batteries, the outside watch. */
  safeguards: Safeguard[];
  people: Person[];
  shifts: Shift[];
  rounds: RoundSlot[];
  /** Round sheets with a schedule of their own. */
  sheets?: RoundSheet[];
  /** Own tolerance profiles, beside the default ones. */
  profiles: ToleranceProfile[];
  systems: System[];
}
