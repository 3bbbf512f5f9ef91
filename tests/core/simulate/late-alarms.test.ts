import type { AlarmDefinition, AlarmSource } from '#core/alarms/definition';
import { conditionOf } from '#core/alarms/condition-of';
import { beginWatch, hold } from '#core/alarms/is-true';
import type { Facility } from '#core/facility/facility';
import { STRIDE, TEMPERATURE } from '#core/simulate/plant';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { alarm, sensor, system } from '../../_support/build-system';
import { judging, subject, tried } from '../review/trying';

const MIN = 60;

/** The base site with one more alarm, and a second probe in the sump. */
function watching(on: AlarmSource, delayS = 300): Facility {
  const one: AlarmDefinition = alarm({ key: 'new', name: 'New', on, delayS, deadBand: 0 });
  const second = sensor({ key: 'second', name: 'Second', tank: 'display', gateway: 'gateway-1' });
  const base = system();
  return facility({ systems: [system({ alarms: [...base.alarms, one], sensors: [...base.sensors, second] })] });
}

/** When the run raises it, s after the onset; undefined: never. */
function raisedIn(site: Facility, fault: string, thing?: string): number | undefined {
  const context = judging(site);
  return tried(context, subject(context, fault, thing)).record.alarms.get('new');
}

describe('what is read off a run', () => {
  test('is what readings of the same water raise: a rate, every ten seconds', () => {
    const site = watching({ kind: 'rate', sensor: 'display-temperature', fallsPerHour: 0.06, overMin: 60 });
    const context = judging(site);
    const trial = tried(context, subject(context, 'return-stops'));
    const atS = trial.record.alarms.get('new');
    const [one] = site.systems;
    const definition = one?.alarms.find(({ key }) => key === 'new');
    const condition = one && definition && conditionOf(site, one, definition);
    if (!condition || atS === undefined) throw new Error('nothing was raised');
    const { machine, record } = trial;
    const node = machine.nodes.findIndex(({ key }) => key === 'display');
    let watch = beginWatch(condition, 0);
    let raisedS = Number.NaN;
    // Readings have been coming since long before.
    for (let s = -6 * 3600; s <= atS + 600 && Number.isNaN(raisedS); s += 10) {
      const at = STRIDE * node + TEMPERATURE;
      const value =
        s < 0
          ? machine.before?.knots.stateAt(machine.before.atS + s)[at]
          : record.knots.between(record.knots.before(s), at, s);
      if (value === undefined) throw new Error('nothing is known of what was before');
      if (s === 0) watch = { ...watch, phase: 'normal', dueMs: null };
      for (const step of hold(condition, watch, {
        atMs: s * 1000,
        cameMs: s * 1000,
        value,
        quality: 'good',
        isByHand: false,
      })) {
        watch = step.watch;
        if (step.turn && s >= 0) raisedS = s;
      }
    }
    expect(Math.abs(raisedS - atS)).toBeLessThan(20);
  });

  test('tells two probes that part, by the one that lies, and not two that agree', () => {
    const on = { kind: 'deviation', sensor: 'display-temperature', other: 'second', by: 0.5 } as const;
    expect(raisedIn(watching(on), 'heater-on', 'heater-1')).toBeUndefined();
    expect(raisedIn(watching(on), 'return-stops')).toBeUndefined();
    const parted = { ...on, other: 'sump-temperature' } as const;
    expect(raisedIn(watching({ ...parted, other: system().sensors[0]?.key ?? '' }), 'return-stops')).toBeGreaterThan(
      300,
    );
  });

  test('tells a probe that stands still after the delay, and none that moves', () => {
    const [probe] = system().sensors;
    const on = { kind: 'frozen', sensor: probe?.key ?? '', within: 0 } as const;
    expect(raisedIn(watching(on, 40 * MIN), 'control-probe-frozen')).toBe(40 * MIN);
    expect(raisedIn(watching(on, 40 * MIN), 'heater-on', 'heater-1')).toBeUndefined();
  });

  test('tells a heater that runs on and on from when it began, and not one that is dead', () => {
    const on = { kind: 'run-limit', equipment: 'heater-1', longerThanMin: 120 } as const;
    const atS = raisedIn(watching(on), 'heater-on', 'heater-1');
    expect(atS).toBeGreaterThanOrEqual(2 * 3600);
    expect(atS).toBeLessThanOrEqual(2 * 3600 + 300 + 1);
    expect(raisedIn(watching(on), 'heater-off', 'heater-1')).toBeUndefined();
  });

  test('takes nothing from what was told before, and changes nothing of what the water does', () => {
    const on = { kind: 'rate', sensor: 'display-temperature', fallsPerHour: 0.06, overMin: 60 } as const;
    const [before, after] = [facility({ systems: [system()] }), watching(on)].map((site) => {
      const context = judging(site);
      const { record } = tried(context, subject(context, 'return-stops'));
      return { told: [...record.alarms].filter(([key]) => key !== 'new'), harms: record.harms, endS: record.endS };
    });
    expect(after).toEqual(before);
  });
});
