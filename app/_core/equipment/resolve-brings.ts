import type { Facility } from '../facility/facility';
import type { Equipment } from '../facility/system';
import { DEFAULTS } from './defaults';
import type { ResolvedDevice } from './resolved';
import { EITHER, HEAT, LESS, MORE, take, type Taker } from './take';

const DAY = 86_400;
const HOUR = 3600;
/** g of chlorine that oxidise as much as a gram of ozone: 70.906 / 47.998, a molecule for a molecule. */
const CHLORINE_PER_OZONE = 1.477;
/** g/mol */
const CARBON_DIOXIDE = 44.0095;

type Brings = Pick<ResolvedDevice, 'nitrifies' | 'oxidant' | 'carbon' | 'brings' | 'removes'>;

/**
 * What a piece of equipment does to what is dissolved.
 * @param salinity of the system, which a supply brings unless somebody says otherwise
 */
export function chemistryOf(
  t: Taker,
  facility: Facility,
  equipment: Equipment,
  salinity: number,
  at: (field: string) => string,
  called: (what: string) => string,
): Brings {
  const { type, nitrifiesGPerDay, ozoneGPerH, co2GPerH, removes } = equipment;
  return {
    nitrifies: nitrifiesGPerDay
      ? take(t, at('nitrifiesGPerDay'), called('nitrogen turned over'), nitrifiesGPerDay, LESS) / DAY
      : null,
    oxidant:
      type === 'ozone'
        ? (CHLORINE_PER_OZONE * take(t, at('ozoneGPerH'), called('ozone'), ozoneGPerH, MORE, DEFAULTS.ozoneGPerH)) /
          HOUR
        : 0,
    carbon:
      type === 'co2'
        ? take(t, at('co2GPerH'), called('carbon dioxide'), co2GPerH, MORE, DEFAULTS.co2GPerH) / HOUR / CARBON_DIOXIDE
        : 0,
    brings: {
      alkalinity: equipment.dosesMmolPerL
        ? take(t, at('dosesMmolPerL'), called('alkalinity of its solution'), equipment.dosesMmolPerL, MORE)
        : 0,
      salinity:
        type === 'supply' ? salinityOf(t, equipment, salinity, at('bringsSalinity'), called('salinity brought')) : 0,
      temperature: temperatureOf(t, facility, equipment, at('bringsC'), called('temperature brought')),
    },
    removes:
      type === 'dechlorinator' ? take(t, at('removes'), called('part taken out'), removes, LESS, DEFAULTS.removes) : 0,
  };
}

function salinityOf(t: Taker, { bringsSalinity }: Equipment, own: number, path: string, name: string): number {
  return bringsSalinity ? take(t, path, name, bringsSalinity, EITHER) : own;
}

/** °C; null: the room's. */
function temperatureOf(t: Taker, facility: Facility, equipment: Equipment, path: string, name: string): number | null {
  if (equipment.bringsC) return take(t, path, name, equipment.bringsC, HEAT);
  const mains = equipment.source === 'mains' ? facility.site.mains?.temperatureC : undefined;
  return mains ? take(t, 'site/mains/temperatureC', 'temperature of the mains', mains, HEAT) : null;
}
