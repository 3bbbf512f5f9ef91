import type { Facility } from '#core/facility/facility';
import type { AlarmDefinition } from '#core/alarms/definition';
import { describe, expect, test } from 'vitest';
import { heater, plan, returnPump, thermostat } from '../../_support/build-equipment';
import { facility, monitor, round, site } from '../../_support/build-facility';
import { alarm, safeguard, system } from '../../_support/build-system';
import type { Given } from '../../_support/given';
import type { System } from '#core/facility/system';
import { answered, judging, subject, untested } from './trying';

const MIN = 60;
/** Noon on Monday: Robin is on site and answers in 10 min. At 02:00 Sam is on call and needs an hour. */
const NOON = 12;

/** The base site without rounds, so that only alarms tell. */
const unwalked = (given: Given<System> = {}, more: Given<Facility> = {}) =>
  facility({ rounds: [], systems: [system(given)], ...more });
const alarms = (change: (one: AlarmDefinition) => AlarmDefinition) => system().alarms.map(change);
const onReturn = ({ key }: AlarmDefinition) => key === 'return-lost' || key === 'return-watts';

/** Answer to a return pump that stops. */
const returnStops = (of: Facility, options?: Parameters<typeof answered>[2]) => {
  const context = judging(of);
  return answered(context, subject(context, 'return-stops'), options);
};

describe('an alarm', () => {
  test('is noticed when its delay is over and put right once somebody has answered, come and worked', () => {
    expect(returnStops(unwalked(), { hour: NOON, workS: 30 * MIN })).toEqual({
      noticeS: 5 * MIN,
      notice: { by: 'alarm', key: 'return-lost' },
      putRightS: (5 + 10 + 30) * MIN,
    });
    expect(returnStops(unwalked(), { hour: 2, workS: 30 * MIN }).putRightS).toBe((5 + 60 + 30) * MIN);
  });

  test('that nobody answers is no notice: the next one that somebody answers is', () => {
    const deaf = unwalked({ alarms: alarms((one) => (onReturn(one) ? { ...one, answeredBy: 'nobody' } : one)) });
    expect(returnStops(deaf).notice).toEqual({ by: 'alarm', key: 'too-cold' });
    const stranger = unwalked({ alarms: alarms((one) => ({ ...one, answeredBy: ['stranger'] })) });
    expect(returnStops(stranger)).toEqual({ noticeS: null, notice: { by: 'nobody' }, putRightS: null });
  });

  test('is noticed but never put right when nobody has the means', () => {
    expect(returnStops(unwalked(), { workS: Number.POSITIVE_INFINITY })).toMatchObject({
      noticeS: 5 * MIN,
      putRightS: null,
    });
  });

  test('whose way to a person is off is not counted on at all', () => {
    const off = { by: 'Robin', why: 'new telephone', since: '2026-05-30', until: '2026-06-05' };
    const path = system().safeguards.map((one) => (one.key === 'alarm-path' ? { ...one, off } : one));
    expect(returnStops(unwalked({ safeguards: path })).notice).toEqual({ by: 'nobody' });
  });

  test('whose way to a person is not tested is not counted on in the tested column', () => {
    const path = system().safeguards.map((one) => (one.key === 'alarm-path' ? untested(one) : one));
    const of = unwalked({ safeguards: path });
    expect(returnStops(of, { column: 'claimed' }).noticeS).toBe(5 * MIN);
    expect(returnStops(of, { column: 'tested' }).notice).toEqual({ by: 'nobody' });
  });

  test('that names no way to a person is a claim and no more', () => {
    const of = unwalked({ alarms: alarms((one) => ({ ...one, safeguard: undefined })) });
    expect(returnStops(of, { column: 'claimed' }).noticeS).toBe(5 * MIN);
    expect(returnStops(of, { column: 'tested' }).notice).toEqual({ by: 'nobody' });
  });
});

describe('an alarm whose way is dead', () => {
  const on = (keys: string[], more: Given<Facility> = {}) =>
    unwalked(
      {},
      {
        monitors: [monitor(), monitor({ key: 'host', kind: 'host' }), monitor({ key: 'router', kind: 'router' })].map(
          (m) => ({
            ...m,
            circuit: keys.includes(m.key) ? 'pumps' : 'watch',
          }),
        ),
        ...more,
      },
    );
  const pumpsTrip = (of: Facility) => {
    const context = judging(of);
    return answered(context, subject(context, 'circuit-trips', 'pumps'), { hour: NOON });
  };

  test('says nothing, but the silence of its gateway is an alarm too', () => {
    expect(pumpsTrip(on([]))).toMatchObject({ noticeS: 5 * MIN, notice: { key: 'return-lost' } });
    expect(pumpsTrip(on(['gateway-1']))).toMatchObject({
      noticeS: 10 * MIN,
      notice: { by: 'alarm', key: 'gateway-silent' },
    });
  });

  test.each([['host'], ['host', 'router', 'gateway-1']])(
    'is made up for by the watch outside the site: %s',
    (...keys) => {
      expect(pumpsTrip(on(keys))).toEqual({
        noticeS: 15 * MIN,
        notice: { by: 'watchdog', key: 'watchdog' },
        putRightS: 25 * MIN,
      });
    },
  );

  test('is not made up for by an outside watch that is absent, untested, or answered by nobody', () => {
    const dead = ['host', 'router', 'gateway-1'];
    expect(pumpsTrip(on(dead, { site: site({ watchdog: undefined }) })).notice).toEqual({ by: 'nobody' });
    const deaf = site({ watchdog: { afterMin: 15, answeredBy: 'nobody', safeguard: 'outside-watch' } });
    expect(pumpsTrip(on(dead, { site: deaf })).notice).toEqual({ by: 'nobody' });
    const context = judging(on(dead, { safeguards: [untested(safeguard({ key: 'outside-watch' }))] }));
    const trips = subject(context, 'circuit-trips', 'pumps');
    expect(answered(context, trips, { column: 'claimed' }).notice.by).toBe('watchdog');
    expect(answered(context, trips, { column: 'tested' }).notice.by).toBe('nobody');
  });
});

describe('of several ways', () => {
  const named = (key: string, delayS: number, answeredBy: AlarmDefinition['answeredBy']) =>
    alarm({ key, delayS, answeredBy, deadBand: 200, on: { kind: 'sensor', sensor: 'return-flow', below: 1000 } });

  test('the first tells, and the one that is followed soonest puts it right', () => {
    const of = unwalked({ alarms: [named('far', 60, ['sam']), named('near', 600, 'rota')] });
    expect(returnStops(of, { hour: NOON })).toEqual({
      noticeS: MIN,
      notice: { by: 'alarm', key: 'far' },
      putRightS: (10 + 10) * MIN,
    });
  });

  test('a round before any alarm tells, and whoever walks it stands before it at once', () => {
    const of = facility({ rounds: [round({ days: ['mon'], at: '12:03' })] });
    expect(returnStops(of, { hour: NOON, workS: 30 * MIN })).toEqual({
      noticeS: 3 * MIN,
      notice: { by: 'round', key: 'morning' },
      putRightS: 33 * MIN,
    });
  });

  test('a round after the alarm can still be what puts it right first', () => {
    const of = facility({
      systems: [system({ alarms: [named('far', 60, ['sam'])] })],
      rounds: [round({ at: '12:30' })],
    });
    expect(returnStops(of, { hour: NOON })).toMatchObject({ notice: { key: 'far' }, putRightS: 30 * MIN });
  });
});

describe('no news of a fault is', () => {
  const seenOnly = (sees: 'salinity' | 'temperature') => ({ rounds: [round({ sees: [sees] })] });
  const welded = (of: Facility) => {
    const context = judging(of);
    return answered(context, subject(context, 'heater-on', 'heater-1'));
  };

  test('what the healthy water shows every day: a salinity a little above the usual band', () => {
    expect(welded(unwalked({ alarms: [] }, seenOnly('salinity'))).notice).toEqual({ by: 'nobody' });
  });

  test('a temperature that the system always runs at, though no guide would have it so', () => {
    const warm = (key: string) => heater({ key, plan: plan({ regulation: thermostat({ lowC: 26.8, highC: 27.2 }) }) });
    const of = (equipment: System['equipment']) =>
      unwalked({ alarms: [], safeguards: [], equipment, states: [] }, seenOnly('temperature'));
    const context = judging(of([warm('heater-1'), returnPump()]));
    const { noticeS } = answered(context, subject(context, 'return-pumps-nothing'));
    expect(noticeS ?? Number.POSITIVE_INFINITY).toBeGreaterThan(24 * 60 * MIN);
  });

  test('an alarm that stands with nothing wrong', () => {
    const standing = alarm({ key: 'always', on: { kind: 'sensor', sensor: 'display-temperature', above: 20 } });
    expect(welded(unwalked({ alarms: [standing] })).notice).toEqual({ by: 'nobody' });
  });

  test('an alarm that the operating state raises by itself', () => {
    const of = unwalked({ alarms: alarms((one) => one).filter(onReturn) });
    const context = judging(of);
    expect(answered(context, subject(context, 'heater-on', 'heater-1', 'feeding')).notice).toEqual({ by: 'nobody' });
  });

  test('a level that the operating state changes by itself', () => {
    const of = unwalked({ alarms: [] }, { rounds: [round({ sees: ['level'] })] });
    const context = judging(of);
    expect(answered(context, subject(context, 'heater-on', 'heater-1', 'feeding')).notice).toEqual({ by: 'nobody' });
  });
});

describe('an alarm that a state raises by itself counts once the state is over', () => {
  const of = (states: System['states']) => unwalked({ states, alarms: alarms((one) => one).filter(onReturn) });

  test('when the fault keeps it up', () => {
    const context = judging(of(system().states));
    expect(answered(context, subject(context, 'return-stops', 'return-pump', 'feeding')).noticeS).toBe((10 + 5) * MIN);
  });

  test('when nobody ends the state', () => {
    const context = judging(of([{ name: 'feeding', lastsMin: { value: 10, origin: 'entered' }, endsBy: 'person' }]));
    const forgotten = subject(context, 'feeding-never-ends', 'feeding', 'feeding');
    expect(answered(context, forgotten)).toMatchObject({ noticeS: 15 * MIN, notice: { key: 'return-lost' } });
  });

  test('and a round that comes by while the state should last sees nothing odd', () => {
    const states: System['states'] = [
      { name: 'feeding', lastsMin: { value: 10, origin: 'entered' }, endsBy: 'person' },
    ];
    const context = judging(
      facility({
        systems: [system({ alarms: [], states })],
        rounds: [round({ at: '12:05' }), round({ key: 'next', at: '13:00' })],
      }),
    );
    const forgotten = subject(context, 'feeding-never-ends', 'feeding', 'feeding');
    expect(answered(context, forgotten, { hour: NOON })).toMatchObject({ noticeS: 60 * MIN, notice: { key: 'next' } });
  });
});
