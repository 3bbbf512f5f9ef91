import type { Facility } from '#core/facility/facility';
import { addDays } from '#core/time/add-days';
import { wallClock } from '#core/time/zone';
import { poolStory, windowStory } from './story';

/** Animals that a stock had before a loss. */
export interface Loss {
  system: string;
  stock: string;
  was: number;
  /** ISO date on which the description was put right: until then it said `was`. */
  on: string;
}

/** The losses of a demonstration site. @param today ISO date on which it is shown */
export function lossesAt({ site, systems }: Facility, today: string): Loss[] {
  const { key, zone } = site;
  const now = (system: string, stock: string) =>
    systems.find((one) => one.key === system)?.stock.find((one) => one.key === stock)?.count ?? 0;
  const after = (ms: number) => addDays(wallClock(zone, ms).date, 1);
  if (key === 'harbour')
    return [
      {
        system: 'touch-pool',
        stock: 'rays',
        was: now('touch-pool', 'rays') + 3,
        on: after(poolStory(zone, today).pausedMs),
      },
    ];
  if (key === 'mill-lane')
    return [
      {
        system: 'window-tank',
        stock: 'fish',
        was: now('window-tank', 'fish') + 1,
        on: after(windowStory(zone, today).seenMs),
      },
    ];
  return [];
}
