import { expect, test } from 'vitest';
import { NOTHING_AROUND } from '#core/alarms/condition';
import { beginWatch } from '#core/alarms/is-true';
import { type Gone, passSite, type SeenOf } from '#core/alarms/pass-site';
import { limits, reading, silence } from './run-alarm';

const seen = (sensor: string, atS: number): SeenOf => ({ ...reading(atS, 25), sensor });
const gone = (atS: number, ...sensors: string[]): Gone => ({ sensors, cameMs: atS * 1000 });

/** Seconds since which each silence of two probes and of one was raised, a second after the last that was said. */
function raised(readings: SeenOf[], lost: Gone[], nowS: number) {
  const conditions = [silence({ sensors: ['a', 'b'], delayS: 600 }), silence({ sensors: ['a'], delayS: 600 })];
  const watched = conditions.map((condition, i) => ({
    alarm: i === 0 ? 'gateway' : 'probe',
    condition,
    watch: beginWatch(condition, 0),
  }));
  const { turns } = passSite(watched, readings, nowS * 1000, false, NOTHING_AROUND, lost);
  return turns.map(({ alarm, turn }) => [alarm, turn.kind, turn.atMs / 1000]);
}

test('what is gone is silent at once, since its last word', () => {
  expect(raised([seen('a', 10), seen('b', 12)], [gone(20, 'a', 'b')], 21)).toEqual([
    ['gateway', 'raised', 12],
    ['probe', 'raised', 10],
  ]);
});

test('a gateway of which something is still there is not', () => {
  expect(raised([seen('a', 10)], [gone(20, 'a')], 21)).toEqual([['probe', 'raised', 10]]);
});

test('what spoke after it was gone is there', () => {
  expect(raised([seen('a', 30), seen('b', 30)], [gone(20, 'a', 'b')], 31)).toEqual([]);
});

test('what never spoke is waited for no longer either', () => {
  expect(raised([], [gone(20, 'a', 'b')], 20)).toEqual([
    ['gateway', 'raised', 0],
    ['probe', 'raised', 0],
  ]);
});

test('a limit is none of it', () => {
  const condition = limits();
  const watched = [{ alarm: 'warm', condition, watch: beginWatch(condition, 0) }];
  expect(passSite(watched, [], 60_000, false, NOTHING_AROUND, [gone(1, 'probe')])).toEqual({ changed: [], turns: [] });
});
