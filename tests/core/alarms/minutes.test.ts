import { describe, expect, test } from 'vitest';
import { acknowledge, follow, limits, open, reading, see, state, tick } from './run-alarm';

/** A night by the minute: readings of a probe, a dot where none came, and what stands at the alarm after each. */
const SCRIPT = `
  0 25.0 over
  1 26.6 over
  2 26.7 over
  3 .    over
  4 .    over
  5 .    over
  6 .    unacknowledged
  7 27.1 unacknowledged
  8 27.0 acknowledged    ack
  9 26.3 acknowledged
 10 26.1 acknowledged
 11 26.0 acknowledged
 12 26.0 over
 13 26.8 over
 14 26.1 over
 15 26.8 over
 16 26.9 over
 17 26.9 over
 18 26.9 over
 19 26.9 over
 20 26.9 unacknowledged
 21 26.0 unacknowledged
 22 26.0 unacknowledged
 23 26.0 returned
 24 .    returned
 25 27.0 returned
 30 27.0 unacknowledged`;

describe('a night, minute by minute: on-delay 5 min, off-delay 2 min, dead band 0.3', () => {
  test('every minute is as it should be, and the alarm nobody looked at stays beside the next one', () => {
    const condition = limits({ delayS: 300, offDelayS: 120 });
    const alarm = follow(condition);
    for (const line of SCRIPT.trim().split('\n')) {
      const [minute = '', value = '', expected, pressed] = line.trim().split(/\s+/);
      const atS = Number(minute) * 60;
      if (pressed === 'ack') acknowledge(alarm);
      if (value !== '.') see(condition, alarm, reading(atS, Number(value)));
      tick(condition, alarm, atS);
      expect({ minute, state: state(alarm) }).toEqual({ minute, state: expected });
    }
    expect(alarm.raised.map(({ beganS }) => beganS / 60)).toEqual([1, 15, 25]);
    expect(open(alarm).map(({ known }) => known)).toMatchObject([
      { active: false, acknowledged: false },
      { active: true, acknowledged: false },
    ]);
  });
});
