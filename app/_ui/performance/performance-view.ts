import type { Often } from '#core/alarms/performance/nuisance';
import type { Performance } from '#core/alarms/performance/report';

/** An alarm by name, and how often. */
export interface OftenView extends Often {
  name: string;
  system: string;
}

/** What one person had to answer, by name. */
export type AnswererView = Performance['answerers'][number] & { name: string };

/** How the alarms of a site did. Instants in ms. */
export interface PerformanceView {
  site: { key: string; name: string; zone: string };
  days: number;
  fromMs: number;
  toMs: number;
  figures: Omit<Performance, 'chattering' | 'fleeting' | 'stale' | 'top' | 'answerers'> & {
    chattering: OftenView[];
    fleeting: OftenView[];
    stale: OftenView[];
    top: OftenView[];
    answerers: AnswererView[];
  };
}

/** A number with as many decimals as say something. */
export function figureSaid(value: number): string {
  if (value === 0) return '0';
  if (value < 0.01) return '< 0.01';
  return value >= 10 ? String(Math.round(value)) : String(Number(value.toPrecision(2)));
}

/** A share of 0 to 1, in hundredths. */
export function shareSaid(share: number): string {
  return `${figureSaid(share * 100)} %`;
}

/** Minutes, as a person would say them. */
export function minutesSaid(min: number): string {
  return min >= 90 ? `${figureSaid(min / 60)} h` : `${figureSaid(min)} min`;
}
