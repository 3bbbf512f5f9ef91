import { coursesOf } from '#core/review/courses';
import type { Trial } from '#core/review/trial';
import { describe, expect, test } from 'vitest';
import { airBlower, heater, plan, returnPump, thermostat } from '../../_support/build-equipment';
import { withSystem } from '../../_support/with-part';
import { randomSite } from '../simulate/random-system';
import { judging, subject, tried } from './trying';

const HOUR = 3600;
const HOURS = Array.from({ length: 24 }, (_, h) => h);
const firstHarm = ({ record }: Trial) =>
  Math.min(Number.POSITIVE_INFINITY, ...record.harms.filter((h) => h.class === 'animals').map((h) => h.atS));

describe('the courses that stand for all hours of the day', () => {
  test.each(['heater-off', 'heater-on', 'control-probe-out', 'air-stops'])(
    'say nearly what each hour says: %s',
    (fault) => {
      // Alone in a room that swings by six kelvin: a cold harm comes a night sooner or later from one hour to the next.
      const context = judging(randomSite(2));
      const of = subject(context, fault);
      const { trials, byHour } = coursesOf(context, context.view('nominal'), of, 'claimed');
      for (const hour of HOURS) {
        const stands = trials[byHour[hour] ?? 0];
        const [is, said] = [firstHarm(tried(context, of, hour)), stands ? firstHarm(stands) : Number.NaN];
        if (is === said) continue;
        expect(Math.abs(is - said), `${hour}:00`).toBeLessThan(Math.max(0.06 * is, 3.5 * HOUR));
      }
    },
  );

  const steady = (...equipment: ReturnType<typeof heater>[]) =>
    judging(withSystem({ equipment: [returnPump(), airBlower(), ...equipment], states: [] }));
  const count = (context: ReturnType<typeof judging>, fault: string) =>
    coursesOf(context, context.view('nominal'), subject(context, fault), 'claimed').trials.length;

  test('are one where nothing follows the time of day', () => {
    expect(count(steady(heater({ ratedW: 600, plan: plan({ regulation: thermostat() }) })), 'heater-on')).toBe(1);
  });

  test('are two where equipment follows it but nothing comes of it', () => {
    const lit = heater({
      ratedW: 100,
      plan: plan({ regulation: { kind: 'hours', from: '08:00', to: '20:00', by: 'controller' } }),
    });
    expect(count(steady(heater({ key: 'heater-2' }), lit), 'air-stops')).toBe(2);
  });

  test('are none for a fault that touches no water', () => {
    expect(count(steady(heater()), 'gateway-silent')).toBe(0);
  });
});
