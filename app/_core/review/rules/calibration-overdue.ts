import { daysBetween } from '../../time/days';
import { changed, example, withSystem } from './example/example';
import type { Rule } from './rule';

/** A sensor whose calibration no longer counts on the day of the review. */
export const rule: Rule = {
  id: 'calibration-overdue',
  title: 'A calibration is overdue',
  why: 'A probe that has drifted regulates to the wrong value and raises its alarm too late.',
  source: 'Thermometers in one room read 15.5 to 17.7 °C side by side (fishforums.net, thread 495197)',
  grade: 'low',
  remedy: 'calibrate',
  check: ({ system, on }) =>
    system.sensors.flatMap(({ name, calibrationDue }) => {
      // The day it is due still counts; ISO dates order as text.
      if (calibrationDue === undefined || calibrationDue >= on) return [];
      const late = daysBetween(calibrationDue, on);
      return [
        {
          cause: name,
          consequence: `What it reads has not been proved for ${late === 1 ? 'a day' : `${late} days`} beyond its date.`,
          figures: [{ name: 'due', value: calibrationDue }],
        },
      ];
    }),
  passing: () =>
    example(withSystem(({ sensors }) => ({ sensors: changed(sensors, 'oxygen', { calibrationDue: '2026-06-01' }) }))),
  failing: () =>
    example(withSystem(({ sensors }) => ({ sensors: changed(sensors, 'oxygen', { calibrationDue: '2026-05-31' }) }))),
};
