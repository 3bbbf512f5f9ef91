import { type Answering, answering, hourOfWeek } from './acknowledged';
import { daysOf, type Load, loadOf } from './load';
import { chattering, fleeting, type Often, stale } from './nuisance';
import type { Period, Raise } from './raise';
import { prioritySpread, topTen } from './spread';

/** What one person had to answer. */
export interface AnswererLoad {
  account: string;
  load: Load;
  /** Calls a week between 22:00 and 06:00 at the site. */
  atNightPerWeek: number;
}

/** How the alarms of a site did over a period. */
export interface Performance {
  load: Load;
  answerers: AnswererLoad[];
  chattering: Often[];
  fleeting: Often[];
  stale: Often[];
  top: Often[];
  topShare: number;
  spread: ReturnType<typeof prioritySpread>;
  answering: Answering;
}

/**
 * How the alarms of a site did over a period.
 *
 * @param raises   raised within it
 * @param zone     IANA zone of the site
 */
export function performanceOf(raises: readonly Raise[], period: Period, zone: string): Performance {
  const { top, share } = topTen(raises);
  const told = new Map<string, number[]>();
  for (const { account, atMs } of raises.flatMap((one) => one.told))
    told.set(account, [...(told.get(account) ?? []), atMs]);
  return {
    load: loadOf(
      raises.map(({ raisedMs }) => raisedMs),
      period,
    ),
    answerers: [...told]
      .map(([account, times]) => ({
        account,
        load: loadOf(times, period),
        atNightPerWeek: (times.filter((at) => isNight(at, zone)).length * 7) / daysOf(period),
      }))
      .sort((a, b) => b.load.count - a.load.count),
    chattering: chattering(raises),
    fleeting: fleeting(raises),
    stale: stale(raises, period.toMs),
    top,
    topShare: share,
    spread: prioritySpread(raises),
    answering: answering(raises, zone),
  };
}

function isNight(atMs: number, zone: string): boolean {
  const hour = hourOfWeek(atMs, zone) % 24;
  return hour >= 22 || hour < 6;
}
