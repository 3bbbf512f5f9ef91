import { ALKALINITY } from './alkalinity';
import { AMMONIA_ALLOWED, AMMONIA_SHARE } from './ammonia';
import { AERATION, RESPIRATION } from './breath';
import { CARBON_DIOXIDE_FRESH, CARBON_DIOXIDE_SEA } from './carbon-dioxide';
import { TOP_OFF, WATER_CHANGES } from './changes';
import { EVAPORATION } from './evaporation';
import { FEED } from './feed';
import { DRAINING, PIPES, WEIR } from './flow';
import { GAS_PRESSURE } from './gas';
import { HYDROMETER } from './hydrometer';
import { OXYGEN, OXYGEN_PERCENT } from './oxygen';
import { PH_SCALE_TABLE } from './ph-scales';
import { BATTERIES, CIRCUITS } from './power';
import { SALINITY } from './salinity';
import type { AlmanacTable } from './table';
import { DOSING, LIMITS, ULTRAVIOLET } from './treatment';
import { WALLS } from './walls';
import { WARMTH } from './warmth';

/** Tables that belong together. */
export interface Chapter {
  id: string;
  title: string;
  tables: readonly AlmanacTable[];
}

/** The whole almanac, in the order in which it is read. */
export const CHAPTERS: readonly Chapter[] = [
  { id: 'salt', title: 'Salt', tables: [SALINITY, HYDROMETER, TOP_OFF] },
  {
    id: 'gases',
    title: 'Oxygen and other gases',
    tables: [OXYGEN, OXYGEN_PERCENT, RESPIRATION, AERATION, GAS_PRESSURE],
  },
  { id: 'ammonia', title: 'Ammonia', tables: [AMMONIA_SHARE, AMMONIA_ALLOWED, FEED] },
  {
    id: 'carbonate',
    title: 'pH, carbon dioxide and alkalinity',
    tables: [PH_SCALE_TABLE, CARBON_DIOXIDE_FRESH, CARBON_DIOXIDE_SEA, ALKALINITY],
  },
  { id: 'heat', title: 'Heat', tables: [WARMTH, EVAPORATION, WALLS] },
  { id: 'flow', title: 'Water that moves', tables: [DRAINING, WEIR, PIPES, WATER_CHANGES] },
  { id: 'treatment', title: 'Treatment and limits', tables: [DOSING, LIMITS, ULTRAVIOLET] },
  { id: 'power', title: 'Power', tables: [BATTERIES, CIRCUITS] },
];

/** The table at an address, if there is one. */
export function tableOf(id: string): AlmanacTable | undefined {
  return CHAPTERS.flatMap(({ tables }) => tables).find((table) => table.id === id);
}
