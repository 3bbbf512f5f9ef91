import { describe, expect, test } from 'vitest';
import type { Equipment } from '#core/facility/system';
import { cutOut, filter, plan, returnPump } from '../../../_support/build-equipment';
import { facility } from '../../../_support/build-facility';
import { alarm, safeguard, sensor, stock, sump, system, tank } from '../../../_support/build-system';
import { entered } from '../../../_support/given';
import { courseOf, floor, profileWith, volume } from '../course';
import { befallen, GALLON } from './case-support';

describe('an octopus opens a valve: about 200 gallons on the floor in ten hours (boingboing.net, 2009-02-27)', () => {
  // A tank of about 10 gallons on a loop that goes on bringing water.
  const loop: Equipment = {
    key: 'loop',
    name: 'Loop',
    type: 'supply',
    tank: 'display',
    flowLPerH: entered(150),
    plan: plan(),
  };
  const site = facility({
    profiles: [profileWith()],
    systems: [
      system({
        tanks: [
          tank({
            volumeL: 38,
            surfaceM2: 0.13,
            rimMm: 60,
            drainAboveMm: 10,
            siphonBreakMm: undefined,
            siphonSafeguard: undefined,
          }),
        ],
        equipment: [loop],
        sensors: [sensor({ key: 'floor', name: 'Floor', quantity: 'leak', tank: undefined })],
        stock: [stock({ group: 'Two-spot octopus', count: 1, eachG: 500, profile: 'exact' })],
        alarms: [
          alarm({ key: 'floor-wet', on: { kind: 'sensor', sensor: 'floor', above: 0.5 }, delayS: 0, deadBand: 0 }),
        ],
        states: [],
      }),
    ],
  });
  const course = befallen(site, 'animal-opens-valve', { hours: 10, fresh: true });

  test('757 L in ten hours, give or take what the level adds', () => {
    expect(floor(course) / GALLON).toBeGreaterThan(190);
    expect(floor(course) / GALLON).toBeLessThan(215);
  });

  test('a sensor on the floor would have called within a minute', () => {
    expect(course.record.alarms.get('floor-wet')).toBeLessThan(60);
  });
});

describe('a hose slips off the return pump: 20 gallons on the floor (aquariumadventures.blogspot.com, 2009-07)', () => {
  // 55 gallons, 1.22 × 0.33 m, the outlet elbow a third of the way down; a sump of 37 gallons of whose free space nothing was told.
  const site = (freeL: number) =>
    facility({
      profiles: [profileWith()],
      systems: [
        system({
          tanks: [
            tank({
              volumeL: 55 * GALLON,
              surfaceM2: 0.4,
              drainDownMm: 20,
              outletMm: 20 + 520 / 3,
              siphonBreakMm: undefined,
              siphonSafeguard: undefined,
            }),
            sump({ volumeL: 37 * GALLON - freeL, surfaceM2: 0.35, rimMm: freeL / 0.35 }),
          ],
          equipment: [returnPump()],
          stock: [stock({ count: 1, profile: 'exact' })],
          alarms: [],
          states: [],
        }),
      ],
    });
  const spilt = (freeL: number) => floor(befallen(site(freeL), 'return-hose-off', { hours: 3, fresh: true }));

  test('a third of the tank and the layer over the weir, less what the sump holds: 76 L lie between a full sump and one with 10 L left', () => {
    expect(spilt(0.5)).toBeGreaterThan(75);
    expect(spilt(0.5)).toBeLessThan(80);
    expect(spilt(10)).toBeLessThan(70);
  });
});

describe('a large tank pumped down overnight, its controls and their back-up dead, its pumps running on (bbc.co.uk, uk-england-devon-11786104)', () => {
  // Neither flow nor volume told: 432 L at 1,500 L/h stand for them; what was told is that it went on to the end, and that nothing stopped it.
  const waste = 1500;
  const site = (trip: boolean) =>
    facility({
      profiles: [profileWith()],
      systems: [
        system({
          tanks: [tank({ siphonBreakMm: undefined, siphonSafeguard: undefined })],
          equipment: [
            filter({
              tank: 'display',
              wasteLPerH: waste,
              wasteToMm: 550,
              plan: plan({
                cutOuts: trip
                  ? [cutOut({ quantity: 'level', tank: 'display', above: undefined, below: -30, safeguard: 'trip' })]
                  : [],
              }),
            }),
          ],
          sensors: [],
          stock: [stock({ count: 1, profile: 'exact' })],
          safeguards: [safeguard({ key: 'trip' })],
          alarms: [],
          states: [],
        }),
      ],
    });
  const left = (trip: boolean, hours: number) => {
    const course = befallen(site(trip), 'waste-open', { hours, fresh: true });
    return { litres: 1000 * volume(course, 'display'), tripped: course.record.acted.has('trip') };
  };
  const emptied = 432 / waste;

  test('is all but empty within two to three times volume over flow, the flow falling with the level', () => {
    expect(left(false, 0.5 * emptied).litres).toBeGreaterThan(0.5 * 432);
    expect(left(false, 3 * emptied).litres).toBeLessThan(0.1 * 432);
  });

  test('a trip five per cent down that needs no network stops the pump and leaves the rest', () => {
    const { litres, tripped } = left(true, 12);
    expect(tripped).toBe(true);
    expect(litres).toBeGreaterThan(0.93 * 432);
  });
});

test('the return stops and a skimmer in the sump overflows, unless it stops too (common practice, no source)', () => {
  const reef = system();
  const site = (interlocked: boolean) =>
    facility({
      systems: [
        system({
          tanks: reef.tanks.map((t) =>
            t.role === 'display' ? { ...t, drainDownMm: entered(40), siphonBreakMm: entered(45) } : t,
          ),
          equipment: reef.equipment.map((one) =>
            one.type === 'skimmer' && !interlocked ? { ...one, plan: { ...one.plan, interlocks: [] } } : one,
          ),
        }),
      ],
    });
  const spilt = (interlocked: boolean) =>
    floor(courseOf(site(interlocked), { hours: 2, fault: (upset) => upset.health.set('return-pump', 'dead') }));
  expect(spilt(false)).toBeGreaterThan(5);
  expect(spilt(true)).toBeLessThan(0.01);
});
