import type { Figure } from './figure';

/** Animals of one kind in one tank. */
export interface Stock {
  key: string;
  group: string;
  tank: string;
  count: number;
  /** Mass of one, grams. */
  eachG: Figure;
  /** Tolerance profile; absent means the default one of the system's kind. */
  profile?: string;
  /** Oxygen used, mg per kg and hour, where measured; else from body mass and temperature. */
  oxygenMgPerKgH?: Figure;
}

/** What a limit is set on. `rise-24h` and `fall-24h` are changes of temperature within any 24 hours, K. */
export const LIMIT_QUANTITIES = [
  'temperature',
  'salinity',
  'oxygen',
  'level',
  'rise-24h',
  'fall-24h',
  'ammonia',
  'carbon-dioxide',
  'ph',
  'oxidant',
] as const;
export type LimitQuantity = (typeof LIMIT_QUANTITIES)[number];

/**
 * One limit of tolerance: beyond it for `forMin` minutes without a break is harm.
 * Units: °C, practical salinity, mg/L, part of the running volume (level), K; un-ionised ammonia mg/L as N, CO2 mg/L, pH (NBS), oxidant
 * mg/L as chlorine.
 */
export interface Limit {
  quantity: LimitQuantity;
  above?: number;
  below?: number;
  forMin: number;
}

/** What a group of animals is kept at, and what harms it. */
export interface ToleranceProfile {
  key: string;
  name: string;
  usual: { temperatureC: [number, number]; salinity: [number, number]; oxygenMgL: number };
  limits: Limit[];
  source: string;
  confidence: 'good' | 'fair' | 'low';
}
