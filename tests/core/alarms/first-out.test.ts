import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AlarmDefinition } from '#core/alarms/definition';
import { type Candidate, firstCauses, isBackupFailing, leavesCalling } from '#core/alarms/first-out/first-cause';
import { explains, type Placed } from '#core/alarms/first-out/explains';
import { heater, returnPump, topOff } from '../../_support/build-equipment';
import { circuit, facility, monitor } from '../../_support/build-facility';
import { alarm, sensor, system } from '../../_support/build-system';

const own = system({
  key: 'tank-1',
  equipment: [
    returnPump({ key: 'pump-1', circuit: 'pumps' }),
    returnPump({ key: 'pump-2', circuit: 'spare' }),
    heater({ key: 'heater', circuit: 'heat' }),
    topOff({ key: 'top-off', circuit: 'heat' }),
  ],
  sensors: [
    sensor({ key: 'flow', quantity: 'flow', gateway: 'gateway-1' }),
    sensor({ key: 'sump-level', quantity: 'level', gateway: 'gateway-1' }),
    sensor({ key: 'warmth', quantity: 'temperature', gateway: 'gateway-2' }),
    sensor({ key: 'oxygen', quantity: 'oxygen', gateway: 'gateway-1' }),
    sensor({ key: 'floor', quantity: 'leak', gateway: 'gateway-1' }),
  ],
});
const other = { ...own, key: 'tank-2' };
const site = facility({
  systems: [own, other],
  circuits: [
    circuit({ key: 'pumps', rcd: 'rcd-1' }),
    circuit({ key: 'heat', rcd: 'rcd-1' }),
    circuit({ key: 'spare', rcd: 'rcd-2', backedBy: ['ups'] }),
    circuit({ key: 'watch', rcd: 'rcd-3', backedBy: ['ups'] }),
  ],
  monitors: [monitor({ key: 'gateway-1', circuit: 'watch' }), monitor({ key: 'gateway-2', circuit: 'pumps' })],
});

function of(key: string, on: AlarmDefinition['on'], given: Partial<AlarmDefinition> = {}, at = own): Placed {
  return { system: at, alarm: { ...alarm({ key, on }), answeredBy: 'rota', ...given } };
}
const watts = (equipment: string, at = own) => of(`watts-${equipment}`, { kind: 'watts', equipment }, {}, at);
const low = (key: string, at = own) => of(`low-${key}`, { kind: 'sensor', sensor: key, below: 1 }, {}, at);
const high = (key: string) => of(`high-${key}`, { kind: 'sensor', sensor: key, above: 1 });
const silent = (gateway: string) => of(gateway, { kind: 'silent', gateway });
const silentSensor = (key: string, at = own) => of(`silent-${key}`, { kind: 'silent-sensor', sensor: key }, {}, at);

describe('one alarm explains another', () => {
  test.each<[string, Placed, Placed]>([
    ['a silent gateway that its sensors are silent', silent('gateway-1'), silentSensor('flow')],
    ['in another system as well', silent('gateway-1'), silentSensor('flow', other)],
    ['a pump its flow', watts('pump-1'), low('flow')],
    ['a pump the level', watts('pump-1'), low('sump-level')],
    ['flow that is lost the level', low('flow'), low('sump-level')],
    ['a heater that it gets cold', watts('heater'), low('warmth')],
    ['the top-off the level', watts('top-off'), low('sump-level')],
    ['one circuit all that hangs on it', watts('pump-1'), watts('pump-1', other)],
    ['one RCD all that is behind it', watts('pump-1'), watts('heater')],
    ['a circuit the gateway on it', watts('pump-1'), silent('gateway-2')],
    ['a leak the level', high('floor'), low('sump-level')],
  ])('%s', (_, cause, effect) => expect(explains(site, cause, effect)).toBe(true));

  test.each<[string, Placed, Placed]>([
    ['another gateway', silent('gateway-2'), silentSensor('flow')],
    ['another system', watts('pump-1'), low('flow', other)],
    ['another circuit', watts('pump-1'), watts('pump-2')],
    ['itself', watts('pump-1'), watts('pump-1')],
    ['a level the pump', low('sump-level'), watts('pump-1')],
    ['low oxygen', watts('pump-1'), low('oxygen')],
    ['high temperature', watts('pump-1'), high('warmth')],
    ['a leak', watts('pump-1'), high('floor')],
  ])('never %s', (_, cause, effect) => expect(explains(site, cause, effect)).toBe(false));
});

/** Raised at a second of one turn each, began as said. */
function raisedAt(id: string, placed: Placed, raisedMs: number, beganMs = raisedMs): Candidate {
  return { id, placed, raisedMs, beganMs, causeId: null };
}

describe('the first cause', () => {
  // Open course on controllers, "Alarms, Diagnostics and Fault Handling": a motor relay at 12:04:31.2 is the first-out, what
  // follows at .6 and at 33.1 is subsequent.
  test('is what was raised first, and all that follows stands under it', () => {
    const relay = raisedAt('a', watts('pump-1'), 31_200);
    const flow = { ...raisedAt('b', low('flow'), 31_600), causeId: 'a' };
    expect(firstCauses(site, [raisedAt('b', low('flow'), 31_600)], [relay])).toEqual(new Map([['b', 'a']]));
    expect(firstCauses(site, [raisedAt('c', low('sump-level'), 33_100)], [relay, flow])).toEqual(new Map([['c', 'a']]));
    expect(firstCauses(site, [raisedAt('c', low('sump-level'), 33_100)], [flow])).toEqual(new Map([['c', 'a']]));
  });

  test('of what is raised in one turn does not depend on the order in which it is looked at', () => {
    const turn = [
      raisedAt('1', silentSensor('flow'), 60, 0),
      raisedAt('2', silent('gateway-1'), 60, 0),
      raisedAt('3', watts('heater'), 60, 20),
      raisedAt('4', watts('pump-1'), 60, 10),
      raisedAt('5', low('flow'), 60, 30),
      raisedAt('6', low('sump-level'), 60, 40),
      raisedAt('7', low('oxygen'), 60, 50),
    ];
    const expected = { 1: '2', 3: '4', 5: '4', 6: '4' };
    fc.assert(
      fc.property(fc.shuffledSubarray(turn, { minLength: turn.length }), (shuffled) => {
        expect(Object.fromEntries(firstCauses(site, shuffled, []))).toEqual(expected);
      }),
    );
  });

  test('is never one that it explains in turn, whatever is raised', () => {
    const all = [
      watts('pump-1'),
      watts('heater'),
      silent('gateway-2'),
      low('flow'),
      low('sump-level'),
      silentSensor('warmth'),
    ];
    const any = fc.record({ which: fc.nat(all.length - 1), raised: fc.nat(3), began: fc.nat(3) });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 6 }), fc.nat(6), (given, split) => {
        const list = given.map(({ which, raised, began }, i) =>
          raisedAt(String(i), all[which] ?? silent('gateway-1'), raised, began),
        );
        const found = firstCauses(site, list.slice(split), list.slice(0, split));
        for (const [effect, cause] of found) {
          expect(cause).not.toBe(effect);
          expect(found.has(cause)).toBe(false);
        }
      }),
    );
  });
});

describe('what is folded leaves the calling to its first cause', () => {
  const graded = (level: 'high' | 'medium' | 'low' | null, answeredBy: AlarmDefinition['answeredBy'] = 'rota') =>
    of('x', { kind: 'watts', equipment: 'pump-1' }, { answeredBy, ...(level && { priority: { level, why: 'so' } }) });
  test.each([
    [null, null, true],
    ['high', 'high', true],
    ['high', null, true],
    ['medium', 'low', true],
    ['medium', 'high', false],
    ['low', null, false],
    [null, 'low', false],
  ] as const)('%s over %s: %s', (cause, effect, leaves) =>
    expect(leavesCalling(graded(cause), graded(effect))).toBe(leaves),
  );
  test('only where the same people answer, and somebody does', () => {
    expect(leavesCalling(graded('high'), graded('low', ['robin']))).toBe(false);
    expect(leavesCalling(graded('high', 'nobody'), graded('low', 'nobody'))).toBe(false);
    expect(leavesCalling(graded('high', ['robin']), graded('low', ['robin']))).toBe(true);
  });
});

test('the backup in charge fails: a second pump of the same kind, or what a battery feeds while the mains are lost', () => {
  expect(isBackupFailing(site, watts('pump-1'), watts('pump-2'))).toBe(true);
  expect(isBackupFailing(site, watts('pump-1'), watts('heater'))).toBe(false);
  expect(isBackupFailing(site, watts('pump-1'), silent('gateway-1'))).toBe(true);
  expect(isBackupFailing(site, silent('gateway-1'), watts('pump-1'))).toBe(false);
  expect(isBackupFailing(site, watts('pump-1'), watts('pump-1'))).toBe(false);
});
