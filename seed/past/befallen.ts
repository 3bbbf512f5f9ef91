import type { Facility } from '#core/facility/facility';
import { instantOf } from '#core/time/zone';
import { addDays } from '#core/time/add-days';
import { randomOf } from './random';
import type { Befallen } from './readings-of';
import type { Stretch } from './sampled';
import { poolStory, windowStory } from './story';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/** What befell the systems of a demonstration site, by key. @param today ISO date on which it is shown */
export function befallenAt(facility: Facility, today: string): ReadonlyMap<string, Befallen> {
  const { key, zone } = facility.site;
  if (key === 'harbour') {
    return new Map([
      ['touch-pool', poolPause(zone, today)],
      ['quarantine', treatment(zone, today)],
    ]);
  }
  return key === 'mill-lane' ? new Map([['window-tank', welded(zone, today)]]) : new Map();
}

/** Return and waterfall stay off after the feeding. */
function poolPause(zone: string, today: string): Befallen {
  const { pausedMs, putRightMs } = poolStory(zone, today);
  return {
    turns: [
      { atMs: pausedMs, state: 'feeding', holds: true },
      { atMs: putRightMs, state: 'normal' },
    ],
    during: [{ fromMs: pausedMs - HOUR_MS, toMs: putRightMs + 6 * HOUR_MS }],
    fedMs: [pausedMs + 2 * MINUTE_MS],
  };
}

/** The heater heats whatever its dial says, and the cut-out behind it does nothing. */
function welded(zone: string, today: string): Befallen {
  const { weldedMs, unpluggedMs } = windowStory(zone, today);
  const dead = ['window-cut-out'];
  return {
    turns: [
      { atMs: weldedMs, state: 'normal', holds: true, dead, befall: ({ health }) => health.set('heater', 'stuck-on') },
      // Unplugged; on the next morning a new heater is in.
      { atMs: unpluggedMs, state: 'normal', holds: true, dead, befall: ({ health }) => health.set('heater', 'dead') },
      { atMs: unpluggedMs + 18 * HOUR_MS, state: 'normal' },
    ],
    during: [{ fromMs: weldedMs - HOUR_MS, toMs: unpluggedMs + 6 * HOUR_MS }],
  };
}

/** A treatment that still lasts. */
function treatment(zone: string, today: string): Befallen {
  const fromMs = instantOf(zone, addDays(today, -3), '10:05');
  const untilMs = fromMs + 7 * 24 * HOUR_MS;
  return {
    turns: [{ atMs: fromMs, state: 'treatment', holds: true }],
    during: [],
    states: [{ system: 'quarantine', state: 'treatment', fromMs, untilMs, endedMs: null }],
  };
}

/** Longest that a gateway is silent without anybody being called. */
const SHORT_MIN = 20;
/** The hall's gateway was silent for longer once, that many days back: it was unplugged for a vacuum cleaner. */
export const SILENT_HALL = { daysAgo: 17, time: '09:10', minutes: 48 };

/** When each gateway of a site was silent, by key: now and then for some minutes, and once for long. */
export function outagesOf(facility: Facility, today: string, days: number): ReadonlyMap<string, readonly Stretch[]> {
  const { key, zone } = facility.site;
  return new Map(
    facility.monitors
      .filter(({ kind }) => kind === 'gateway')
      .map((gateway) => {
        const random = randomOf(key, gateway.key, 'outages');
        const stretches = Array.from({ length: random.whole(3, 6) }, (): Stretch => {
          const fromMs =
            instantOf(zone, addDays(today, -random.whole(1, days - 1)), '00:00') + random.between(0, 24) * HOUR_MS;
          return {
            fromMs,
            toMs: fromMs + random.between(8, watched(facility, gateway.key) ? SHORT_MIN : 150) * MINUTE_MS,
          };
        });
        if (key === 'harbour' && gateway.key === 'gateway-hall') {
          const fromMs = instantOf(zone, addDays(today, -SILENT_HALL.daysAgo), SILENT_HALL.time);
          stretches.push({ fromMs, toMs: fromMs + SILENT_HALL.minutes * MINUTE_MS });
        }
        return [gateway.key, stretches];
      }),
  );
}

/** Whether an alarm tells of its silence. */
function watched({ systems }: Facility, gateway: string): boolean {
  return systems.some(({ alarms }) => alarms.some(({ on }) => on.kind === 'silent' && on.gateway === gateway));
}
