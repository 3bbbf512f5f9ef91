import { instantOf, instantsOf, wallClock } from '#core/time/zone';
import { describe, expect, test } from 'vitest';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();

/** Places whose clocks change in every way there is: by an hour, by half an hour, at midnight, below the equator, not at all. */
const ZONES = [
  'America/New_York',
  'Europe/London',
  'Europe/Berlin',
  'Australia/Sydney',
  'Australia/Lord_Howe',
  'America/Phoenix',
  'Asia/Beirut',
  'Asia/Kolkata',
  'Asia/Tokyo',
  'Atlantic/Azores',
  'Pacific/Auckland',
  'America/Santiago',
];

/** Half hours of the days on which the database finds that clocks change, of the days after, and of New Year. Years gone by, whose rules no law can change any more. */
const HALF_HOURS = `
  WITH days AS (
    SELECT zone, day, day AT TIME ZONE zone - (day - interval '1 day') AT TIME ZONE zone AS before,
           (day + interval '1 day') AT TIME ZONE zone - day AT TIME ZONE zone AS long
    FROM unnest($1::text[]) AS zone, generate_series(timestamp '2018-01-01', '2025-12-31', '1 day') AS day)
  SELECT zone, wall FROM days, generate_series(day, day + interval '23 hours 30 minutes', '30 minutes') AS wall
  WHERE long <> interval '24 hours' OR before <> interval '24 hours' OR extract(doy FROM day) = 1`;

/**
 * Beside PostgreSQL, which brings its own copy of the IANA time zone database and its own arithmetic. Of a time that is
 * leapt over it takes the offset before the leap, as we do; of a time that comes twice the last, where we take the first.
 */
describe('times on the wall, beside the database', () => {
  test('every half hour of the days on which clocks change is the same moment', async () => {
    const { rows } = await query(
      `SELECT zone, to_char(wall, 'YYYY-MM-DD') AS date, to_char(wall, 'HH24:MI') AS time, wall AT TIME ZONE zone AS at
         FROM (${HALF_HOURS}) AS half_hours`,
      [ZONES],
    );
    const wrong = rows.filter(({ zone, date, time, at }) => instantsOf(zone, date, time).at(-1) !== at.getTime());
    expect(wrong.slice(0, 5)).toEqual([]);
    const twice = rows.filter(({ zone, date, time, at }) => instantOf(zone, date, time) !== at.getTime());
    const changing = new Set(twice.map(({ zone }) => zone));
    expect(ZONES.filter((zone) => !changing.has(zone))).toEqual(['America/Phoenix', 'Asia/Kolkata', 'Asia/Tokyo']);
    // Once a year two half hours come twice in each of eight places, and one in the ninth.
    expect(twice.length).toBe(8 * (8 * 2 + 1));
  });

  test('every half hour of UTC on those days shows the same time, and the two that show alike differ by their offset', async () => {
    const { rows } = await query(
      `SELECT DISTINCT zone, at, to_char(at AT TIME ZONE zone, 'YYYY-MM-DD HH24:MI') AS shown
         FROM (${HALF_HOURS}) AS half_hours, LATERAL (SELECT wall AT TIME ZONE 'UTC' AS at) AS utc`,
      [ZONES],
    );
    const shown = rows.map(({ zone, at }) => ({ zone, ...wallClock(zone, at.getTime()) }));
    const wrong = rows.filter((row, index) => row.shown !== `${shown[index]?.date} ${shown[index]?.time}`);
    expect(wrong.slice(0, 5)).toEqual([]);
    expect(new Set(shown.map((clock) => Object.values(clock).join(' '))).size).toBe(rows.length);
  });
});
