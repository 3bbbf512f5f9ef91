import { derive } from '../readings/derived/derive';
import type { WaterGiven, WaterQuantity } from './check';

/** What follows from the figures of a water test, and which of them were taken from the description. */
export interface Implied {
  is: 'unionised-ammonia' | 'oxygen-saturation';
  /** mg/L as N, or %. */
  value: number;
  /** What was not measured, and was taken as the system is kept. */
  taken: ('salinity' | 'temperature')[];
}

/**
 * What the figures of a water test imply, as soon as they are there: un-ionised ammonia from total ammonia, pH, temperature and
 * salinity; how far oxygen is from saturation. Nothing is implied where a figure is missing that nothing stands for (pH never
 * has a stand-in), or lies where the law does not hold. The laws, with sources and ranges: `unionisedShare`, `oxygenPercent`.
 *
 * @param figures   as typed, in the facility file's units
 * @param given     what is known of the water besides
 */
export function impliedBy(figures: Readonly<Partial<Record<WaterQuantity, number>>>, given: WaterGiven): Implied[] {
  const { ammonia, oxygen, ph } = figures;
  const temperature = figures.temperature ?? given.temperature;
  const salinity = figures.salinity ?? given.salinity;
  const taken: Implied['taken'] = [];
  if (figures.salinity === undefined) taken.push('salinity');
  if (figures.temperature === undefined) taken.push('temperature');
  const { phScale, pressureAtm } = given;
  const beside = { ...(temperature !== undefined && { temperature }), ...(salinity !== undefined && { salinity }) };
  const poison = withLead('unionised-ammonia', ammonia, { ...beside, ...(ph !== undefined && { ph }) }, { phScale });
  const share = withLead('oxygen-saturation', oxygen, beside, { pressureAtm });
  return [
    ...(poison === null ? [] : [{ is: 'unionised-ammonia' as const, value: poison, taken }]),
    ...(share === null ? [] : [{ is: 'oxygen-saturation' as const, value: share, taken }]),
  ];
}

function withLead(
  kind: Implied['is'],
  lead: number | undefined,
  beside: { temperature?: number; salinity?: number; ph?: number },
  given: { phScale: WaterGiven['phScale'] } | { pressureAtm: number },
): number | null {
  return lead === undefined ? null : derive(kind, { lead, ...beside }, given);
}
