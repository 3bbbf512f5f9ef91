import { standing, walksDue } from '#core/rounds/due';
import { addDays } from '#core/time/add-days';
import { instantOf } from '#core/time/zone';
import { describe, expect, test } from 'vitest';
import { demoOn } from '../../seed/demo';
import { type Past, pastOf } from '../../seed/past/past';
import { demoSite } from './demo-site';

function shown(key: string, day: string, time: string): { past: Past; nowMs: number } {
  const facility = demoOn(demoSite(key), day);
  const nowMs = instantOf(facility.site.zone, day, time);
  return { past: pastOf(facility, day, nowMs), nowMs };
}

/** Alarms that are up or that nobody acknowledged. */
const open = ({ lives }: Past) =>
  lives
    .filter(({ raised, acknowledged }) => raised.returned === null || acknowledged === null)
    .map(({ raised, acknowledged }) => [raised.system, raised.alarm, acknowledged !== null]);

/** Rounds since the day before that are late or were missed. */
function behind({ facility, today, rounds }: Past, nowMs: number): string[] {
  const walks = walksDue(facility.rounds, facility.site.zone, addDays(today, -1), addDays(today, 1), facility.shifts);
  return walks.flatMap((due) => {
    const walked = rounds.find(({ walk }) => walk.slot.key === due.slot.key && walk.date === due.date);
    const stands = standing(due, walked?.begunMs ?? null, walked?.signedMs ?? null, nowMs);
    return stands === 'late' || stands === 'missed' ? [`${due.slot.key} ${due.date} ${stands}`] : [];
  });
}

// The clocks of these sites went forward on 28 March 2027 at 01:00 (tz database, Europe/London).
describe('a demonstration that is loaded at some hour', () => {
  test.each([
    ['quay-street', '2026-11-24', '03:00'],
    ['quay-street', '2026-11-24', '12:00'],
    ['quay-street', '2026-11-24', '23:50'],
    ['quay-street', '2027-03-28', '04:10'],
    ['mill-lane', '2027-03-28', '04:10'],
    ['mill-lane', '2027-03-14', '04:10'],
  ])('finds %s calm on %s at %s: no alarm is up, no round is late', (key, day, time) => {
    const { past, nowMs } = shown(key, day, time);
    expect(open(past)).toEqual([]);
    expect(behind(past, nowMs)).toEqual([]);
  });

  test('finds one alarm up at the aquarium, acknowledged, and one treatment under way', () => {
    const { past, nowMs } = shown('harbour', '2026-11-24', '23:50');
    expect(open(past)).toEqual([['moon-jellies', 'return-watts', true]]);
    expect(behind(past, nowMs)).toEqual([]);
    const states = [...past.systems.values()].flatMap((one) => one.states).filter(({ endedMs }) => endedMs === null);
    expect(states.map(({ system, state }) => [system, state])).toEqual([['quarantine', 'treatment']]);
  });
});
