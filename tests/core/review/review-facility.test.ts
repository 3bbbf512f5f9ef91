import type { Facility } from '#core/facility/facility';
import { defaultProfile } from '#core/facility/profiles';
import { reviewFacility, siteFindings } from '#core/review/review-facility';
import type { Shift } from '#core/rota/rota';
import { describe, expect, test } from 'vitest';
import { airBlower, heater, plan, returnPump, thermostat } from '../../_support/build-equipment';
import { facility, room, round, shift } from '../../_support/build-facility';
import { entered } from '../../_support/given';
import { REVIEWED_ON, system } from '../../_support/build-system';

const causes = (site: Facility) =>
  siteFindings(site).map(({ id, grade, lines }) => [id, grade, lines.map((l) => l.cause)]);
const rota = (...shifts: Shift[]) => facility({ shifts, rounds: [] });

describe('hours with nobody on site or on call', () => {
  test('are no finding where somebody always is', () => {
    expect(siteFindings(facility())).toEqual([]);
  });

  test('are one finding, a line for each stretch, joined over midnight and over the end of the week', () => {
    const weekdays = shift({ days: ['mon', 'tue', 'wed', 'thu', 'fri'] });
    expect(causes(rota(weekdays))).toEqual([
      [
        'do:rota-gap',
        'medium',
        [
          'Monday 18:00, 14 h',
          'Tuesday 18:00, 14 h',
          'Wednesday 18:00, 14 h',
          'Thursday 18:00, 14 h',
          'Friday 18:00, 62 h',
        ],
      ],
    ]);
  });

  test('can be the whole week', () => {
    expect(causes(rota())).toEqual([['do:rota-gap', 'medium', ['Monday 00:00, 168 h']]]);
  });
});

test('rounds with nobody on site to walk them are told, since the review counts on none of them', () => {
  const rounds = [round(), round({ key: 'late', name: 'Late round', days: ['mon', 'sun'], at: '18:00' })];
  const [found] = siteFindings(facility({ rounds }));
  expect(found).toMatchObject({ id: 'do:staff-round', grade: 'low' });
  expect(found?.lines).toMatchObject([{ cause: 'Late round, 18:00', figures: [{ name: 'days', value: 'mon, sun' }] }]);
});

describe('the review of a site', () => {
  const small = (key: string, ratedW: number) =>
    system({
      key,
      equipment: [heater({ ratedW, plan: plan({ regulation: thermostat() }) }), returnPump(), airBlower()],
      states: [],
      // Heat is what tells the three apart: a leak befalls them all alike.
      feedGPerDay: entered(0),
      stock: system().stock.map((stock) => ({ ...stock, profile: 'heat' })),
    });
  const reef = defaultProfile('reef');
  const site = facility({
    profiles: [{ ...reef, key: 'heat', limits: reef.limits.filter(({ quantity }) => quantity !== 'level') }],
    rooms: [room({ temperatureC: 23.5 })],
    rounds: [],
    systems: [small('calm', 80), { ...small('hot', 900), alarms: [] }, small('warm', 900)],
  });

  test('has the system first that is closest to losing animals', () => {
    const review = reviewFacility(site, REVIEWED_ON);
    expect(review.systems.map((one) => [one.system, one.worst.claimed.verdict])).toEqual([
      ['hot', 'no-warning'],
      ['warm', 'covered'],
      ['calm', 'covered'],
    ]);
  });

  test('is of the systems asked for alone', () => {
    const review = reviewFacility(site, REVIEWED_ON, ['warm']);
    expect(review.systems.map((one) => one.system)).toEqual(['warm']);
    expect(reviewFacility(site, REVIEWED_ON, []).systems).toEqual([]);
  });
});
