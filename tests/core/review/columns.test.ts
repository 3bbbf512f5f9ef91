import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { FaultCase } from '#core/review/result';
import { describe, expect, test } from 'vitest';
import {
  airBlower,
  cutOut,
  heater,
  levelControl,
  offWithoutReturn,
  plan,
  returnPump,
  thermostat,
  topOff,
} from '../../_support/build-equipment';
import { circuit, facility, room } from '../../_support/build-facility';
import { reservoir, safeguard, sump, system, tank } from '../../_support/build-system';
import { entered, type Given } from '../../_support/given';
import { judged, untested } from './trying';

/** A heater that would overheat the water by itself, under the protection a test states. */
const strong = (cutOuts = [cutOut()]) => heater({ ratedW: 600, plan: plan({ cutOuts, regulation: thermostat() }) });

/** In a room so warm that nothing but the heater can do harm, unless a test says how cold it is. */
const kept = (given: Given<System>, temperatureC = 23.5): Facility =>
  facility({
    rooms: [room({ temperatureC })],
    systems: [system({ equipment: [strong(), returnPump(), airBlower()], states: [], ...given })],
  });
const withUntested = (...keys: string[]) =>
  system().safeguards.map((one) => (keys.includes(one.key) ? untested(one) : one));
const both = (c: FaultCase) => [c.claimed.verdict, c.tested.verdict];

describe('the tested column', () => {
  test('is the claimed one where all that acted and all that told is tested', () => {
    const c = judged(kept({}), 'heater-on');
    expect(c.claimed.acted).toEqual(['heater-1-cut-out']);
    expect(c.tested).toEqual(c.claimed);
  });

  test('is the claimed one where what is untested had no part in the case', () => {
    const c = judged(
      kept({ safeguards: withUntested('siphon-break', 'skimmer-interlock', 'heater-2-cut-out') }),
      'heater-on',
    );
    expect(c.tested).toEqual(c.claimed);
  });

  test('leaves out a cut-out that acted and is not tested', () => {
    const c = judged(kept({ safeguards: withUntested('heater-1-cut-out') }), 'heater-on');
    expect(both(c)).toEqual(['holds', 'covered']);
    expect(c.claimed.acted).toEqual(['heater-1-cut-out']);
    expect(c.tested.acted).toEqual([]);
  });

  test('leaves out the alarm that told, where its way to a person is not tested', () => {
    const site = kept({ equipment: [strong([]), returnPump(), airBlower()], safeguards: withUntested('alarm-path') });
    const c = judged({ ...site, rounds: [] }, 'heater-on');
    expect(both(c)).toEqual(['covered', 'no-warning']);
    expect(c.claimed.outcomes[0]?.harmS).toEqual(c.tested.outcomes[0]?.harmS);
    expect(c.tested.outcomes[0]?.noticeS.every((s) => s === null)).toBe(true);
  });

  test('leaves out both', () => {
    const site = kept({ safeguards: withUntested('heater-1-cut-out', 'alarm-path') });
    expect(both(judged({ ...site, rounds: [] }, 'heater-on'))).toEqual(['holds', 'no-warning']);
  });
});

describe('a line that names no safeguard is a claim and no more, where it acted:', () => {
  const tanks = (given: Parameters<typeof tank>[0]) => [tank(given), sump(), reservoir()];

  test('an interlock', () => {
    // The probe is in the display, so without its interlock the heater cooks the sump once the return has stopped.
    const locked = (safeguard?: string) => {
      const regulation = thermostat({ sensors: ['display-temperature'] });
      const heats = heater({ ratedW: 700, plan: plan({ interlocks: [offWithoutReturn({ safeguard })], regulation }) });
      const noBreak = tanks({ siphonBreakMm: undefined, siphonSafeguard: undefined, outletMm: 15 });
      return kept({ equipment: [heats, returnPump(), airBlower()], tanks: noBreak }, 20);
    };
    const proved = judged(locked('heater-interlock'), 'return-stops');
    expect(proved.tested.outcomes).toEqual(proved.claimed.outcomes);
    const c = judged(locked(), 'return-stops');
    expect(c.claimed.outcomes).toEqual(proved.claimed.outcomes);
    expect(c.tested.outcomes[0]?.lastChanceS[0]).toBeLessThan(0.5 * (c.claimed.outcomes[0]?.lastChanceS[0] ?? 0));
    expect(c.claimed.acted).toEqual([]);
  });

  test('a siphon break', () => {
    const drains = (siphonSafeguard?: string) =>
      kept({ tanks: tanks({ outletMm: 400, siphonBreakMm: 15, siphonSafeguard }) }, 20);
    expect(both(judged(drains('siphon-break'), 'return-stops'))).toEqual(['covered', 'covered']);
    const c = judged(drains(), 'return-stops');
    expect(c.claimed.outcomes.map((o) => o.harm.class)).toEqual(['animals']);
    expect(c.tested.outcomes.map((o) => o.harm.class)).toEqual(['animals', 'floor']);
  });

  test('a run limit', () => {
    const fills = (runLimitSafeguard?: string) => {
      const filling = topOff({ flowLPerH: 60, plan: plan({ regulation: levelControl({ runLimitSafeguard }) }) });
      return kept({
        tanks: [tank(), sump({ rimMm: 30 }), reservoir({ volumeL: 200 })],
        equipment: [strong(), returnPump(), airBlower(), filling],
        alarms: [],
      });
    };
    expect(both(judged(fills('top-off-run-limit'), 'top-off-on'))).toEqual(['holds', 'holds']);
    const c = judged(fills(), 'top-off-on');
    expect(c.claimed.verdict).toBe('holds');
    expect(c.tested.outcomes.map((o) => o.harm.class)).toContain('floor');
  });

  test('a battery', () => {
    const base = facility();
    const on = (upsSafeguard?: string) =>
      facility({
        rooms: [room({ temperatureC: 24 })],
        site: { ...base.site, powerCut: undefined },
        circuits: base.circuits.map((one) =>
          one.key === 'air' ? circuit({ ...one, backedBy: ['ups'], upsMin: 20_000, upsSafeguard }) : one,
        ),
        systems: [
          system({
            equipment: [returnPump(), airBlower()],
            states: [],
            stock: system().stock.map((s) => ({ ...s, count: 60 })),
            feedGPerDay: entered(0),
          }),
        ],
      });
    expect(both(judged(on('battery'), 'utility-fails'))).toEqual(['holds', 'holds']);
    const c = judged(on(), 'utility-fails');
    expect(c.claimed.verdict).toBe('holds');
    expect(c.tested.outcomes[0]?.harm.what).toBe('oxygen');
  });
});

test('a safeguard that is off counts as absent in both columns', () => {
  const off = { by: 'Robin', why: 'its relay is with the maker', since: '2026-05-20', until: '2026-06-20' };
  const away = system().safeguards.map((one) => (one.key === 'heater-1-cut-out' ? { ...one, off } : one));
  const c = judged(kept({ safeguards: away }), 'heater-on');
  expect(both(c)).toEqual(['covered', 'covered']);
  expect(c.claimed.acted).toEqual([]);
  const back = away.map((one) => (one.off ? { ...one, off: { ...off, until: '2026-05-31' } } : one));
  expect(both(judged(kept({ safeguards: back }), 'heater-on'))).toEqual(['holds', 'holds']);
});

test('a battery that serves no part of the system has no part in its columns', () => {
  const site = facility({
    safeguards: [safeguard({ key: 'battery', tests: [] }), safeguard({ key: 'outside-watch' })],
  });
  const c = judged({ ...site, systems: kept({}).systems }, 'heater-on');
  expect(c.tested).toEqual(c.claimed);
});
