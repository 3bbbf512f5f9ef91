import { describe, expect, test } from 'vitest';
import { momentsIn } from '#core/readings/file/instants';
import { readTime } from '#core/readings/file/read-time';
import type { DateOrder } from '#core/readings/file/layout';

/** The wall clock that a text means, as ISO; or the moment, when it says its difference from UTC. */
function read(text: string, order: DateOrder | null = null): string | null {
  const time = readTime([text], { as: 'text', date: 0, order });
  if (time === null) return null;
  return 'atMs' in time
    ? new Date(time.atMs).toISOString()
    : new Date(time.day * 86_400_000 + time.dayMs).toISOString().slice(0, 19);
}

describe('the time of a row', () => {
  // ISO 8601 and RFC 3339, section 5.8, for those with a difference from UTC; the others are written as loggers write them.
  test.each([
    ['2018-08-01 15:00', null, '2018-08-01T15:00:00'],
    ['2018-08-01T15:00:30', null, '2018-08-01T15:00:30'],
    ['1985-04-12T23:20:50.52Z', null, '1985-04-12T23:20:50.520Z'],
    ['1996-12-19T16:39:57-08:00', null, '1996-12-20T00:39:57.000Z'],
    ['20180801 1500', null, '2018-08-01T15:00:00'],
    ['10/11/2018 17:01', 'mdy', '2018-10-11T17:01:00'],
    ['10/11/2018 17:01', 'dmy', '2018-11-10T17:01:00'],
    ['24.12.2019 6:05', 'dmy', '2019-12-24T06:05:00'],
    ['12/24/19 06:05:09 PM', 'mdy', '2019-12-24T18:05:09'],
    ['12/24/19 12:05 AM', 'mdy', '2019-12-24T00:05:00'],
    ['01-Feb-2020 00:00', null, '2020-02-01T00:00:00'],
    ['Feb 29, 2020', null, '2020-02-29T00:00:00'],
    ['2020/02/29', null, '2020-02-29T00:00:00'],
    ['2020-01-31 24:00', null, '2020-02-01T00:00:00'],
  ] as const)('%s in the order %s is %s', (text, order, said) => {
    expect(read(text, order)).toBe(said);
  });

  test.each([
    ['10/11/2018 17:01', null],
    ['24/12/2019', 'mdy'],
    ['2019-02-29', null],
    ['2020-13-01', null],
    ['2020-01-01 25:00', null],
    ['2020-01-01 10:61', null],
    ['12/24/19 13:05 PM', 'mdy'],
    ['30.1', null],
    ['', null],
    ['MM', null],
  ] as const)('%s in the order %s is none', (text, order) => {
    expect(read(text, order)).toBeNull();
  });

  test('two digits of a year from 69 on are of the last century (POSIX strptime, %y)', () => {
    expect(read('01.01.69', 'dmy')).toBe('1969-01-01T00:00:00');
    expect(read('01.01.68', 'dmy')).toBe('2068-01-01T00:00:00');
  });

  test('in parts, in seconds, in milliseconds', () => {
    const parts = { as: 'parts', columns: [0, 1, 2, 3, 4] } as const;
    expect(readTime(['2018', '08', '01', '15', '30'], { ...parts, columns: [...parts.columns] })).toEqual({
      day: 17_744,
      dayMs: 55_800_000,
      hasClock: true,
    });
    expect(readTime(['1576250220'], { as: 'epoch', column: 0, unit: 's' })).toEqual({ atMs: 1_576_250_220_000 });
    expect(readTime(['1576250220123'], { as: 'epoch', column: 0, unit: 'ms' })).toEqual({ atMs: 1_576_250_220_123 });
  });
});

describe('the moment of a wall clock', () => {
  const HOUR = 3_600_000;
  const day = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;

  test('at a difference from UTC is the same all year', () => {
    const momentOf = momentsIn('-04:00');
    expect(momentOf(day('2019-01-10'), 12 * HOUR)).toEqual({ atMs: Date.parse('2019-01-10T16:00:00Z') });
    expect(momentOf(day('2019-07-10'), 12 * HOUR)).toEqual({ atMs: Date.parse('2019-07-10T16:00:00Z') });
  });

  // Clocks in London: forward on 2026-03-29 at 01:00, back on 2026-10-25 at 02:00 (the IANA time zone database).
  test('that is leapt over is put off and told; one that comes twice has both', () => {
    const momentOf = momentsIn('Europe/London');
    expect(momentOf(day('2026-03-29'), 1.5 * HOUR)).toEqual({
      atMs: Date.parse('2026-03-29T01:30:00Z'),
      isSkipped: true,
    });
    expect(momentOf(day('2026-10-25'), 1.5 * HOUR + 7000)).toEqual({
      atMs: Date.parse('2026-10-25T00:30:07Z'),
      againMs: Date.parse('2026-10-25T01:30:07Z'),
    });
    expect(momentOf(day('2026-10-25'), 2.5 * HOUR)).toEqual({ atMs: Date.parse('2026-10-25T02:30:00Z') });
    expect(momentOf(day('2026-06-01'), 24 * HOUR)).toEqual({ atMs: Date.parse('2026-06-01T23:00:00Z') });
  });
});
