import type { Facility } from '#core/facility/facility';
import type { PastIncident } from './incidents';
import type { Life } from './lives';
import { poolIncident } from './pool-incident';
import type { Series } from './sampled';
import { poolStory, windowStory } from './story';
import { windowIncident } from './window-incident';

/** Incidents of a demonstration site, oldest first; entries that lie ahead are left out. @param today ISO date */
export function pastIncidents(
  facility: Facility,
  {
    today,
    untilMs,
    lives,
    series,
  }: { today: string; untilMs: number; lives: readonly Life[]; series: readonly Series[] },
): PastIncident[] {
  const { key, zone } = facility.site;
  const lifeOf = (system: string, sinceMs: number) => {
    const found = lives.find(({ raised }) => raised.system === system && raised.beganMs >= sinceMs);
    if (!found) throw new Error(`No alarm was raised at ${system}`);
    return found;
  };
  const all =
    key === 'harbour'
      ? [poolIncident(facility, today, lifeOf('touch-pool', poolStory(zone, today).pausedMs), series)]
      : key === 'mill-lane'
        ? [windowIncident(facility, today, lifeOf('window-tank', windowStory(zone, today).weldedMs))]
        : [];
  return all.map((one) => ({ ...one, entries: one.entries.filter(({ recordedMs }) => recordedMs <= untilMs) }));
}
