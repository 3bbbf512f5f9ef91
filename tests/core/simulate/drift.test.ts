import { describe, expect, test } from 'vitest';
import {
  airBlower,
  cutOut,
  heater,
  levelControl,
  plan,
  returnPump,
  thermostat,
  topOff,
} from '../../_support/build-equipment';
import { circuit, facility, room } from '../../_support/build-facility';
import { reservoir, safeguard, stock, sump, system, tank } from '../../_support/build-system';
import { type Ask, type Course, courseOf, profileWith, temperature, timeTo } from './course';

const HOUR = 3600;
const DAY = 24 * HOUR;

const GENERATOR = {
  startsAfterS: { value: 1, origin: 'entered' as const },
  fuelH: { value: 30, origin: 'entered' as const },
  safeguard: 'generator',
};

function harms({ record }: Course): unknown[] {
  return record.harms.map((h) => [h.what, h.direction, h.tank, h.atS]);
}

/** The same course to its early end and to the end of seven days. */
function bothWays(site: Parameters<typeof courseOf>[0], ask: Partial<Ask>): { short: Course; whole: Course } {
  const course = (settle: boolean) => courseOf(site, { hours: 168, ...ask, options: { settle } });
  return { short: course(true), whole: course(false) };
}

describe('a run ends early only where nothing is left to happen, also when it has just turned round', () => {
  test('a reservoir that ran into the sump for twenty hours, and evaporation that takes six days to undo it', () => {
    const site = facility({
      systems: [
        system({
          tanks: [tank({ cover: 'lidded' }), sump({ rimMm: 400 }), reservoir({ volumeL: 24 })],
          equipment: [
            heater({ plan: plan({ regulation: thermostat() }) }),
            heater({ key: 'heater-2', name: 'Heater 2', ratedW: 400, plan: plan({ regulation: thermostat() }) }),
            returnPump(),
            airBlower(),
            topOff({ flowLPerH: 1.2, plan: plan({ regulation: levelControl({ runLimitMin: undefined }) }) }),
          ],
          stock: [stock({ count: 1, profile: 'exact' })],
          alarms: [],
        }),
      ],
      profiles: [profileWith()],
    });
    let late = 0;
    for (const more of [2, 3, 3.5, 4, 4.5, 5, 6, 7]) {
      const { short, whole } = bothWays(site, {
        fault: (upset) => upset.probes.set('sump-level', { as: 'stuck', value: -1000 }),
        adjust: ({ plant }) => {
          plant.evaporationWPerPa.forEach((w, k) => {
            plant.evaporationWPerPa[k] = more * w;
          });
        },
      });
      expect(harms(short)).toEqual(harms(whole));
      if (timeTo(whole, 'pump-dry') > 2 * DAY && timeTo(whole, 'pump-dry') < 7 * DAY) late++;
    }
    expect(late).toBeGreaterThan(2);
  });

  test('a cut-out that opened for good, and the slow cooling that follows', () => {
    let late = 0;
    for (const volumeL of [400, 900, 2000, 4000]) {
      const site = facility({
        rooms: [room({ temperatureC: 16 })],
        profiles: [profileWith({ quantity: 'temperature', below: 20 })],
        systems: [
          system({
            tanks: [tank({ volumeL }), sump()],
            equipment: [
              heater({
                ratedW: 500,
                plan: plan({ cutOuts: [cutOut({ above: 27 })], regulation: thermostat() }),
              }),
              returnPump(),
              airBlower(),
            ],
            stock: [stock({ count: 1, profile: 'exact' })],
            alarms: [],
          }),
        ],
      });
      const { short, whole } = bothWays(site, { fault: (upset) => upset.health.set('heater-1', 'stuck-on') });
      expect(harms(short)).toEqual(harms(whole));
      if (timeTo(whole, 'temperature') > 1.5 * DAY && timeTo(whole, 'temperature') < 7 * DAY) late++;
    }
    expect(late).toBeGreaterThan(0);
  });

  test('and it does end early where it can', () => {
    const site = facility();
    const { short, whole } = bothWays(site, { fault: (upset) => upset.health.set('circulation-pump', 'dead') });
    expect(harms(short)).toEqual(harms(whole));
    expect(short.record.why).toBe('settled');
    expect(short.record.endS).toBeLessThan(3 * DAY);
  });
});

describe('a change within 24 hours', () => {
  // A great body of water, kept warm for thirty hours by a generator and then cooling by some 3 K a day. Steps are two hours
  // long by then; the day must be a day all the same.
  const site = (limit: number, forMin = 0) =>
    facility({
      site: { ...facility().site, generator: GENERATOR },
      safeguards: [safeguard({ key: 'generator', kind: 'standby-power' })],
      circuits: [circuit({ backedBy: ['generator'] })],
      rooms: [room({ temperatureC: 12 })],
      profiles: [profileWith({ quantity: 'fall-24h', above: limit, forMin })],
      systems: [
        system({
          tanks: [tank({ volumeL: 2000, lossWPerK: 25, cover: 'lidded' })],
          equipment: [
            heater({
              tank: 'display',
              circuit: 'pumps',
              ratedW: 2000,
              plan: plan({ regulation: thermostat({ sensors: ['display-temperature'] }) }),
            }),
          ],
          stock: [stock({ count: 1, profile: 'exact' })],
          alarms: [],
          states: [],
        }),
      ],
    });
  const cooling = (limit: number, forMin = 0) =>
    courseOf(site(limit, forMin), {
      hours: 96,
      fault: (upset) => {
        upset.utilityDown = true;
      },
    });
  const reference = cooling(50);
  const at = (t: number) => temperature(reference, 'display', t);
  const starts = Array.from({ length: 72 * 60 }, (_, i) => 60 * i);
  /** The greatest fall within any 24 hours of the course, K, by a look at every minute. */
  const greatest = Math.max(...starts.map((t) => at(t) - at(t + DAY)));

  test('is harm a hair below the greatest there was, and none a hair above', () => {
    const steps = reference.record.knots;
    expect(steps.time(steps.length - 1) - steps.time(steps.length - 2)).toBeGreaterThan(HOUR);
    expect(greatest).toBeGreaterThan(2);
    expect(timeTo(cooling(0.999 * greatest), 'fall-24h')).toBeLessThan(60 * HOUR);
    expect(timeTo(cooling(1.005 * greatest), 'fall-24h')).toBe(Number.POSITIVE_INFINITY);
  });

  test('is found at the moment it is reached, counted from the warmest of the day before', () => {
    const limit = 0.6 * greatest;
    const t = timeTo(cooling(limit), 'fall-24h');
    const warmest = Math.max(...starts.filter((s) => s > t - DAY && s < t).map(at));
    expect(warmest - at(t)).toBeCloseTo(limit, 3);
  });

  test('is harm only once it has stood as long as the limit says', () => {
    const limit = 0.6 * greatest;
    expect(timeTo(cooling(limit, 90), 'fall-24h') - timeTo(cooling(limit), 'fall-24h')).toBeCloseTo(5400, 1);
    expect(timeTo(cooling(0.9999 * greatest, 600), 'fall-24h')).toBe(Number.POSITIVE_INFINITY);
  });
});
