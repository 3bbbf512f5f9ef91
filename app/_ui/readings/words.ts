import type { SeriesQuantity } from '#core/readings/figures';
import type { DerivedKind } from '#core/readings/derived/series';
import type { Origin, Quality } from '#core/readings/reading';
import type { Span } from '#core/readings/spans';
import { DAY } from '#core/time/week';
import { siteAddress } from '../frame/site-address';
import { lasting } from '../words/lasting';

/** What a sensor measures, or what follows from readings, in words. */
export const QUANTITY_WORDS: Record<SeriesQuantity, string> = {
  temperature: 'temperature',
  level: 'level',
  flow: 'flow',
  salinity: 'salinity',
  oxygen: 'oxygen',
  leak: 'leak',
  watts: 'watts',
  ph: 'pH',
  'oxygen-saturation': 'oxygen saturation',
  conductivity: 'conductivity',
  redox: 'redox',
  ammonia: 'total ammonia',
  nitrite: 'nitrite',
  nitrate: 'nitrate',
  phosphate: 'phosphate',
  alkalinity: 'alkalinity',
  pressure: 'pressure',
  turbidity: 'turbidity',
  'carbon-dioxide': 'carbon dioxide',
  oxidant: 'oxidant',
  'unionised-ammonia': 'un-ionised ammonia',
  'temperature-difference': 'difference of temperature',
  'top-off': 'top-off in a day',
};

/** By what law a derived series follows. */
export const LAW_WORDS: Record<DerivedKind, string> = {
  'oxygen-saturation':
    'what is dissolved, as a part of what water of this temperature and salinity holds in balance with air',
  'unionised-ammonia':
    'the part of total ammonia that poisons, by pH on the scale of its probe, temperature and salinity',
  salinity:
    'practical salinity by the scale of 1978, of conductivity as the water has it, or at the temperature that its meter brings it to',
  difference: 'what one probe reads more than the other, where both were read within five minutes',
  'watts-beyond': 'watts above the watts range, or below it with a minus; nothing inside it and while nothing is drawn',
  'top-off': 'litres moved in the 24 hours before, by the fall of the reservoir or by the running time of the pump',
};

/** How a reading came. */
export const ORIGIN_WORDS: Record<Origin, string> = { device: 'by itself', file: 'from a file', hand: 'by hand' };

export const QUALITY_WORDS: Record<Quality, string> = { good: 'good', suspect: 'suspect', bad: 'bad' };

export const SPAN_WORDS: Record<Span, string> = {
  day: 'Day',
  week: 'Week',
  month: 'Month',
  'sixty-days': '60 days',
  year: 'Year',
};

/** Days from which on parts of a day say nothing. */
const MANY_DAYS = 10;

/** A state of a system, as it is said. */
export function stateSaid(state: string): string {
  return state.replaceAll('-', ' ');
}

/** How long ago something was. @param seconds   below 0 when it lies ahead */
export function ago(seconds: number): string {
  if (seconds < -60) return `${lasting(-seconds)} ahead`;
  if (seconds < 5) return 'just now';
  if (seconds >= MANY_DAYS * DAY) return `${Math.round(seconds / DAY)}\u00a0days ago`;
  return `${lasting(seconds)} ago`;
}

/** Address of the readings of a sensor. */
export function sensorAddress(site: string, system: string, sensor: string): string {
  return siteAddress(site, 'readings', system, sensor);
}
