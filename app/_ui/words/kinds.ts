import type { EquipmentType, SystemKind } from '#core/facility/system';

/** Kinds of system in words. */
export const KIND_WORDS: Record<SystemKind, string> = {
  reef: 'reef',
  'fish-only-marine': 'tropical marine fish',
  'cold-marine': 'cold marine',
  'tropical-fresh': 'tropical fresh',
  goldfish: 'goldfish',
  brackish: 'brackish',
  jelly: 'jellies',
  ray: 'rays',
  quarantine: 'quarantine',
  'coral-farm': 'coral farm',
  'live-food': 'live food',
};

/** Types of equipment in words. */
export const EQUIPMENT_WORDS: Record<EquipmentType, string> = {
  heater: 'heater',
  chiller: 'chiller',
  'return-pump': 'return pump',
  'circulation-pump': 'circulation pump',
  skimmer: 'skimmer',
  'air-blower': 'air blower',
  'top-off': 'top-off',
  filter: 'filter',
  'drain-valve': 'drain valve',
  light: 'light',
  uv: 'UV',
  ozone: 'ozone',
  doser: 'doser',
  co2: 'carbon dioxide',
  feeder: 'feeder',
  supply: 'water supply',
  dechlorinator: 'dechlorinator',
  other: 'other',
};
