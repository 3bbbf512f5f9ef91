import type { Facility } from '#core/facility/facility';
import { defaultProfile } from '#core/facility/profiles';
import type { Limit } from '#core/facility/stock';
import { lastChance } from '#core/review/last-chance';
import type { Trial } from '#core/review/trial';
import { HOUR } from '#core/time/week';
import { describe, expect, test } from 'vitest';
import {
  airBlower,
  circulationPump,
  heater,
  levelControl,
  plan,
  returnPump,
  thermostat,
  topOff,
} from '../../_support/build-equipment';
import { facility, room } from '../../_support/build-facility';
import { reservoir, stock, system } from '../../_support/build-system';
import { withSystem } from '../../_support/with-part';
import { scanned } from './rescue';
import { judging, subject, tried } from './trying';

/** A heater with nothing above its thermostat, in the base system's water. */
const bare = (watts: number) => heater({ ratedW: watts, plan: plan({ regulation: thermostat() }) });
const only = (...equipment: ReturnType<typeof heater>[]): Facility => withSystem({ equipment, states: [] });

const trialOf = (site: Facility, fault: string, thing?: string): Trial => {
  const context = judging(site);
  return tried(context, subject(context, fault, thing));
};
const harmOf = (trial: Trial) => Math.min(...trial.record.harms.filter((h) => h.class === 'animals').map((h) => h.atS));
const chanceOf = (trial: Trial) => lastChance(trial, 'animals') ?? Number.NaN;

/** The base system with these limits alone, kept by one heater without cut-out. */
const limited = (watts: number, limits: Limit[]): Facility =>
  facility({
    profiles: [{ ...defaultProfile('reef'), key: 'own', limits }],
    systems: [
      system({ equipment: [bare(watts), returnPump(), airBlower()], stock: [stock({ profile: 'own' })], states: [] }),
    ],
  });

/** Room at 20 °C and a big heater that obeys a probe in the display but heats the sump. */
const slug = facility({
  rooms: [room({ temperatureC: 20 })],
  systems: [
    system({
      equipment: [
        heater({ ratedW: 700, plan: plan({ regulation: thermostat({ sensors: ['display-temperature'] }) }) }),
        returnPump(),
        circulationPump(),
        airBlower(),
      ],
      states: [],
    }),
  ],
});

describe('the last chance is the one that a plain scan of all moments finds', () => {
  test.each<[string, Facility, string, string | undefined]>([
    ['a strong heater welded on', only(bare(600), returnPump(), airBlower()), 'heater-on', 'heater-1'],
    ['a weak heater welded on, over two days', only(bare(215), returnPump(), airBlower()), 'heater-on', 'heater-1'],
    [
      'a slow climb past a limit, further than a day may bring since the last normal day',
      limited(210, [
        { quantity: 'temperature', above: 29, forMin: 120 },
        { quantity: 'rise-24h', above: 4, forMin: 60 },
      ]),
      'heater-on',
      'heater-1',
    ],
    [
      'a slow climb of animals that must not be cooled fast again',
      limited(210, [
        { quantity: 'temperature', above: 29, forMin: 120 },
        { quantity: 'fall-24h', above: 2.2, forMin: 60 },
      ]),
      'heater-on',
      'heater-1',
    ],
    [
      'a heater that is dead in a cold room',
      facility({
        rooms: [room({ temperatureC: 14 })],
        systems: [system({ equipment: [bare(300), returnPump(), airBlower()], states: [] })],
      }),
      'heater-off',
      'heater-1',
    ],
    ['a return that stops while the heater goes on in the sump', slug, 'return-pumps-nothing', undefined],
  ])('%s', (_, site, fault, thing) => {
    const trial = trialOf(site, fault, thing);
    const harmS = harmOf(trial);
    expect(harmS).toBeGreaterThan(HOUR);
    const { good, bad } = scanned(trial, 'animals', harmS, 40);
    const chance = chanceOf(trial);
    const fine = Math.max(60, 0.004 * harmS);

    expect(chance).toBeGreaterThanOrEqual(good - fine);
    expect(chance).toBeLessThanOrEqual(bad + fine);
  });
});

test('hot water waiting in the sump makes the last chance far earlier than the harm', () => {
  const trial = trialOf(slug, 'return-pumps-nothing');
  expect(trial.record.harms[0]).toMatchObject({ tank: 'display', direction: 'below' });
  expect(chanceOf(trial)).toBeLessThan(0.5 * harmOf(trial));
  expect(chanceOf(trial)).toBeGreaterThan(HOUR);
});

describe('a limit that may be exceeded for a while', () => {
  const above = (forMin: number) => limited(600, [{ quantity: 'temperature', above: 29, forMin }]);
  const crossing = trialOf(above(0), 'heater-on');

  test('is harm once that while is over, and can still be saved within it', () => {
    const trial = trialOf(above(120), 'heater-on');
    expect(harmOf(trial)).toBeCloseTo(harmOf(crossing) + 120 * 60, -1);
    expect(chanceOf(trial)).toBeGreaterThan(chanceOf(crossing));
    expect(chanceOf(trial)).toBeLessThan(harmOf(trial) - 60);
  });

  test('goes on being exceeded after it was put right, until the water is back', () => {
    const trial = trialOf(above(600), 'heater-on');
    const { good, bad } = scanned(trial, 'animals', harmOf(trial), 60);
    expect(chanceOf(trial)).toBeGreaterThan(good - 120);
    expect(chanceOf(trial)).toBeLessThan(bad + 120);
    // The water needs hours to cool again; these are hours that nobody has.
    expect(harmOf(trial) - chanceOf(trial)).toBeGreaterThan(HOUR);
  });

  test('can be saved to the last half minute where the harm is there at once and mending it stops it at once', () => {
    expect(harmOf(crossing) - chanceOf(crossing)).toBeLessThan(0.01 * harmOf(crossing));
  });
});

describe('there is no last chance', () => {
  test('where the course leads to no such harm', () => {
    const trial = trialOf(only(bare(600), returnPump(), airBlower()), 'heater-on');
    expect(lastChance(trial, 'floor')).toBeNull();
    expect(lastChance(trial, 'equipment')).toBeNull();
    expect(lastChance(trial, 'animals')).toBeGreaterThan(0);
  });

  test('but the very beginning where the harm is there at once', () => {
    const site = facility();
    const context = judging(site);
    // The base plan leaves the return on while water is drawn from its sump.
    const trial = tried(context, subject(context, 'state-alone', 'reef-1', 'water-change'));
    expect(trial.record.harms[0]).toMatchObject({ class: 'equipment', atS: 0 });
    expect(lastChance(trial, 'equipment')).toBe(0);
  });
});

test('what stays beyond a limit after it was put right counts on to the end of the time that limit bears', () => {
  const DAY = 86_400;
  const four = { quantity: 'salinity', below: 34, forMin: 4 * 1440 } as const;
  const site = facility({
    profiles: [{ ...defaultProfile('reef'), key: 'own', limits: [four] }],
    systems: [
      system({
        tanks: [...system().tanks.filter(({ role }) => role !== 'reservoir'), reservoir({ volumeL: 60 })],
        equipment: [
          bare(300),
          returnPump(),
          airBlower(),
          topOff({ flowLPerH: 60, plan: plan({ regulation: levelControl({ runLimitMin: undefined }) }) }),
        ],
        stock: [stock({ profile: 'own' })],
        states: [],
      }),
    ],
  });
  const trial = trialOf(site, 'top-off-on');
  const since = trial.record.exposures.find(({ limit }) => trial.machine.limits[limit]?.what === 'salinity')?.fromS;
  if (since === undefined) throw new Error('the water was to be thinned out');
  expect(harmOf(trial)).toBeCloseTo(since + 4 * DAY, 0);
  // Nobody takes the fresh water out again: only before the limit is crossed is there anything to be won (found to a five-hundredth of the time).
  expect(chanceOf(trial)).toBeLessThan(since + harmOf(trial) / 500);
});
