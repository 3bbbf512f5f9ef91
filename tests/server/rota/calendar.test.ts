import { describe, expect, test } from 'vitest';
import ICAL from 'ical.js';
import type { Facility } from '#core/facility/facility';
import type { DutyException } from '#core/rota/rota';
import { turnsOf } from '#core/rota/turns';
import { dayStart, instantOf } from '#core/time/zone';
import { walksDue } from '#core/rounds/due';
import { writeRounds } from '#server/rota/write-rounds';
import { writeCalendar } from '#server/rota/write-calendar';
import { facility, person, shift, site } from '../../_support/build-facility';

// 66 letters before an umlaut that a fold of 75 octets would cut in two, and all that has to be escaped.
const HARD = `Ada; of the tide, "north"\nby the \\ bank ${'ä'.repeat(70)}`;
const SITE = { id: '01a2119e-3a5a-773f-ac5d-188c0fd166eb', name: 'Harbour; Aquarium', sequence: 6 };

const given = (zone: string, name = 'Ada'): Facility =>
  facility({
    site: site({ zone }),
    people: [person({ key: 'ada', name }), person({ key: 'ben', name: 'Ben' })],
    shifts: [
      shift({ key: 'night', people: ['ada', 'ben'], from: '22:00', to: '06:00' }),
      shift({ key: 'call', kind: 'on-call', people: ['ben'], from: '06:00', to: '22:00' }),
    ],
  });

interface Wanted {
  name?: string;
  mine?: string | null;
  exceptions?: DutyException[];
}

function write(zone: string, day: string, { name, mine, exceptions = [] }: Wanted = {}): string {
  const of = given(zone, name);
  const from = dayStart(zone, day);
  const turns = turnsOf({ ...of, exceptions }, from, from + 86_400_000);
  const { sequence, ...named } = SITE;
  const at = new Date('2026-11-25T18:30:00Z');
  return writeCalendar({ site: { ...named, zone }, facility: of, turns, exceptions, mine, sequence, at });
}

/** Events as an independent library reads them: Mozilla's ical.js. */
function events(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
}
const night = (text: string) => events(text).find(({ uid }) => uid.includes('.night.'));
const hours = (event: ICAL.Event | undefined) => (event?.duration.toSeconds() ?? 0) / 3600;

describe('a calendar of shifts, read by an independent library', () => {
  // Source: the changes of the clocks in the IANA time zone database.
  test.each([
    ['America/New_York', '2026-03-07', 7],
    ['America/New_York', '2026-10-31', 9],
    ['Europe/Berlin', '2026-03-28', 7],
    ['Europe/Berlin', '2026-10-24', 9],
    ['Australia/Lord_Howe', '2026-10-03', 7.5],
    ['Europe/London', '2026-06-06', 8],
  ])('has the true length of the night in %s from %s: %d hours', (zone, day, expected) => {
    const found = events(write(zone, day)).filter(({ uid }) => uid.startsWith(`${day}.night.`));
    expect(found).toHaveLength(1);
    expect(hours(found[0])).toBe(expected);
    expect(found[0]?.startDate.zone.tzid).toBe('UTC');
  });

  test('holds a name with all that has to be escaped and folded', () => {
    const text = write('Europe/London', '2026-06-06', { name: HARD });
    expect(night(text)?.summary).toBe(`On site: ${HARD}, Ben`);
    expect(night(text)?.location).toBe('Harbour; Aquarium');
    expect(night(text)?.description).toContain('22:00 to 06:00 Europe/London');
  });

  test('ends each line with CRLF, and folds at 75 octets without cutting a letter in two (RFC 5545, 3.1)', () => {
    for (let before = 0; before < 4; before += 1) {
      const text = write('Europe/London', '2026-06-06', { name: `${'x'.repeat(before)}${'äß水🐟'.repeat(40)}` });
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      const lines = text.split('\r\n').map((line) => Buffer.from(line, 'utf8'));
      expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(75);
      // A letter cut in two would come back as the mark of a broken one.
      expect(lines.map(String).join()).not.toContain('\uFFFD');
      expect(night(text)?.summary).toContain('äß水🐟'.repeat(40));
    }
  });

  test('has no control character, whatever a name holds', () => {
    const text = write('Europe/London', '2026-06-06', { name: 'A\u0000d\u0007a\u007f' });
    expect(night(text)?.summary).toBe('On site: A d a , Ben');
  });

  test('names an event by shift and day, the same at each reading, and numbers it as it is told', () => {
    const [first, again] = [write('Europe/London', '2026-06-06'), write('Europe/London', '2026-06-06')];
    expect(events(first).map(({ uid }) => uid)).toEqual(events(again).map(({ uid }) => uid));
    expect(new Set(events(first).map(({ uid }) => uid)).size).toBe(events(first).length);
    expect(night(first)?.sequence).toBe(6);
    expect(night(first)?.uid).toBe(`2026-06-05.night.${SITE.id}@holdfast`);
  });

  test('tells one person of their own shifts, nobody of nobody’s, and no alarm to anybody', () => {
    const own = events(write('Europe/London', '2026-06-06', { mine: 'ada' }));
    expect(own.map(({ summary }) => summary)).toEqual(['On site', 'On site']);
    expect(events(write('Europe/London', '2026-06-06', { mine: null }))).toEqual([]);
    expect(write('Europe/London', '2026-06-06')).not.toContain('VALARM');
    expect(events(write('Europe/London', '2026-06-06')).some(({ summary }) => summary === 'On call: Ben')).toBe(true);
  });

  test('tells a swap with both names, and leave that cuts a turn in two as two events of their own names', () => {
    const at = (time: string) => instantOf('Europe/London', '2026-06-06', time);
    const exceptions: DutyException[] = [
      { kind: 'swap', shift: 'call', date: '2026-06-06', gives: 'ben', takes: 'ada' },
      { kind: 'leave', person: 'ada', from: at('10:00'), to: at('12:00') },
    ];
    const found = events(write('Europe/London', '2026-06-06', { exceptions }));
    const calls = found.filter(({ summary }) => summary === 'On call: Ada for Ben');
    expect(calls.map(hours)).toEqual([4, 10]);
    expect(new Set(found.map(({ uid }) => uid)).size).toBe(found.length);
    expect(calls[0]?.uid).toBe(`2026-06-06.call.${SITE.id}@holdfast`);
    expect(found.filter(({ summary }) => summary === 'On leave: Ada').map(hours)).toEqual([2]);
    const own = events(write('Europe/London', '2026-06-06', { exceptions, mine: 'ben' }));
    expect(own.every(({ summary }) => summary === 'On site')).toBe(true);
  });
});

test('a calendar of rounds says when each is due, through the night on which the clocks go forward', () => {
  const { rounds, shifts } = given('Europe/London');
  const walks = walksDue(rounds, 'Europe/London', '2026-03-28', '2026-03-30', shifts);
  const text = writeRounds({ ...SITE, zone: 'Europe/London' }, walks, 3, new Date('2026-03-01T00:00:00Z'));
  const found = events(text).map((event) => `${event.summary} ${event.startDate.toJSDate().toISOString()}`);
  expect(found).toContain('Morning round 2026-03-28T08:30:00.000Z');
  expect(found).toContain('Morning round 2026-03-29T07:30:00.000Z');
  expect(found).toHaveLength(walks.length);
});
