import { FAULTS } from '#core/faults/catalogue';
import type { Facility } from '#core/facility/facility';
import { concerned } from '#core/review/in-place';
import { isRemedy, type RemedyId, remedyFor, remedyText } from '#core/review/remedies';
import type { CaseThing } from '#core/review/result';
import { describe, expect, test } from 'vitest';
import {
  airBlower,
  chiller,
  circulationPump,
  cutOut,
  heater,
  plan,
  returnPump,
  skimmer,
  thermostat,
  topOff,
  levelControl,
} from '../../_support/build-equipment';
import { circuit, facility, round, site } from '../../_support/build-facility';
import { alarm, safeguard, system } from '../../_support/build-system';
import { withAlarm, withEquipment, withSystem } from '../../_support/with-part';
import { faultCase, type GivenOutcome, judgement, outcome } from './build-outcome';
import { judging } from './trying';

const late = (given: GivenOutcome = {}) => outcome({ putRightS: 36_000, ...given });
const equipment = (key: string): CaseThing => ({ kind: 'equipment', key, name: key });

/** What is proposed for a fault case whose only remedy, before the last resort, is the one given. */
const proposed = (of: Facility, id: RemedyId, thing: CaseThing): string =>
  remedyFor(judging(of), faultCase(judgement([late()]), { thing, remedies: [id] }), late());

/** The base alarms without those that watch a quantity's sensor, or watts. */
const without = (...keys: string[]) => withSystem({ alarms: system().alarms.filter(({ key }) => !keys.includes(key)) });
const base = facility();
const lock = (sensor: string, side: { above: number } | { below: number }) => ({
  when: { kind: 'sensor' as const, sensor, ...side },
  then: 'off' as const,
  by: 'controller' as const,
});
const level = { kind: 'level', sensor: 'sump-level', lowMm: -6, highMm: 0, by: 'controller' } as const;

describe('a remedy that is in place already is not proposed, and one that is not there is:', () => {
  const heater1 = equipment('heater-1');
  const pumps: CaseThing = { kind: 'circuit', key: 'pumps', name: 'Pumps' };
  const probe: CaseThing = { kind: 'sensor', key: 'sump-temperature', name: 'Sump temperature' };
  const place: CaseThing = { kind: 'site', key: 'harbour', name: 'Harbour' };
  const bare = heater({ plan: plan({ regulation: thermostat() }) });
  const twoProbes = heater({
    plan: plan({ regulation: thermostat({ sensors: ['sump-temperature', 'display-temperature'] }) }),
  });
  const cold = { ...chiller().plan, cutOuts: [cutOut({ above: undefined, below: 22 })] };
  const onlyHeater = (one = heater()) => withSystem({ equipment: [one, returnPump(), airBlower()] });

  test.each<[RemedyId, CaseThing, Facility, Facility]>([
    ['cut-out', heater1, base, withEquipment(bare)],
    ['low-cut-out', equipment('chiller-1'), withEquipment(chiller({ plan: cold })), withEquipment(chiller())],
    ['second-heater', heater1, base, onlyHeater()],
    ['split-heaters', heater1, base, onlyHeater()],
    [
      'second-chiller',
      equipment('chiller-1'),
      withEquipment(chiller(), chiller({ key: 'chiller-2' })),
      withEquipment(chiller()),
    ],
    ['second-return', equipment('return-pump'), withEquipment(returnPump({ key: 'return-2' })), base],
    ['second-probe', probe, withSystem({ equipment: [twoProbes, returnPump()] }), base],
    ['lost-sensing', probe, base, withSystem({ equipment: [bare, returnPump()] })],
    ['run-limit', equipment('top-off'), base, withEquipment(topOff({ plan: plan({ regulation: level }) }))],
    [
      'high-level-lock',
      equipment('top-off'),
      withEquipment(
        topOff({ plan: plan({ interlocks: [lock('sump-level', { above: 20 })], regulation: levelControl() }) }),
      ),
      base,
    ],
    [
      'skimmer-interlock',
      equipment('skimmer'),
      withEquipment(skimmer({ plan: plan({ interlocks: [lock('sump-level', { above: 20 })] }) })),
      base,
    ],
    [
      'level-trip',
      equipment('return-pump'),
      withEquipment(returnPump({ plan: plan({ interlocks: [lock('sump-level', { below: -90 })] }) })),
      base,
    ],
    [
      'watts-alarm',
      heater1,
      withAlarm(alarm({ key: 'heater-watts', on: { kind: 'watts', equipment: 'heater-1' } })),
      base,
    ],
    ['circuit-alarm', pumps, base, without('return-watts', 'return-lost')],
    ['watts-range', heater1, base, withEquipment(heater({ wattsRange: undefined }))],
    ['flow-alarm', equipment('return-pump'), base, without('return-lost')],
    ['oxygen-alarm', equipment('skimmer'), base, without('oxygen-low')],
    ['level-alarm', equipment('top-off'), base, without('sump-high', 'sump-low')],
    ['leak-alarm', equipment('top-off'), base, without('floor-wet')],
    ['high-alarm', heater1, base, without('too-warm')],
    ['low-alarm', heater1, base, without('too-cold')],
    ['salinity-round', equipment('top-off'), base, facility({ rounds: [round({ sees: ['equipment'] })] })],
    ['second-air', equipment('skimmer'), withEquipment(airBlower({ circuit: 'heat' })), base],
    [
      'air-in-tank',
      equipment('return-pump'),
      base,
      withEquipment(airBlower({ circuit: 'pumps' }), circulationPump({ circuit: 'pumps' })),
    ],
    ['backed-air', place, base, facility({ circuits: base.circuits.map((c) => circuit({ ...c, backedBy: [] })) })],
    ['outside-watch', place, base, facility({ site: site({ watchdog: { afterMin: 15, answeredBy: 'nobody' } }) })],
    [
      'gateway-power',
      place,
      base,
      facility({
        circuits: base.circuits.map((c) => circuit({ ...c, backedBy: c.key === 'watch' ? [] : c.backedBy })),
      }),
    ],
    ['generator', place, facility({ site: site({ generator: { safeguard: 'battery' } }) }), base],
    [
      'generator-test',
      place,
      facility({ site: site({ generator: { safeguard: 'battery' } }) }),
      facility({
        site: site({ generator: { safeguard: 'battery' } }),
        safeguards: [safeguard({ key: 'battery', tests: [] })],
      }),
    ],
    ['power-cut-means', place, base, facility({ site: site({ powerCut: undefined }) })],
    [
      'pause-timer',
      { kind: 'state', key: 'feeding', name: 'feeding' },
      base,
      withSystem({ states: [{ name: 'feeding', endsBy: 'person' }] }),
    ],
  ])('%s', (id, thing, there, absent) => {
    expect(proposed(there, id, thing)).not.toBe(id);
    expect(proposed(absent, id, thing)).toBe(id);
  });

  test('nor one that is off, or an alarm that nobody answers', () => {
    const off = { by: 'Robin', why: 'broken', since: '2026-05-01', until: '2026-07-01' };
    const away = system().safeguards.map((one) => (one.key === 'heater-1-cut-out' ? { ...one, off } : one));
    expect(proposed(withSystem({ safeguards: away }), 'cut-out', heater1)).toBe('cut-out');
    expect(proposed(withAlarm(alarm({ answeredBy: 'nobody' })), 'high-alarm', heater1)).toBe('high-alarm');
  });
});

test('the most direct of the remedies that are not in place is proposed', () => {
  const of = (site: Facility, remedies: RemedyId[]) =>
    remedyFor(judging(site), faultCase(judgement([late()]), { remedies }), late());
  expect(of(base, ['cut-out', 'split-heaters', 'watts-alarm', 'high-alarm'])).toBe('watts-alarm');
  expect(of(withEquipment(heater({ plan: plan({ regulation: thermostat() }) })), ['cut-out', 'watts-alarm'])).toBe(
    'cut-out',
  );
});

describe('where all of them are in place', () => {
  const left = (given: GivenOutcome) =>
    remedyFor(judging(base), faultCase(judgement([late(given)]), { remedies: ['cut-out', 'high-alarm'] }), late(given));

  test('what is noticed in time wants quicker hands, and what is not an earlier warning', () => {
    expect(left({ noticeS: 600 })).toBe('quicker-hands');
    expect(left({ noticeS: 20_000 })).toBe('earlier-warning');
    expect(left({ noticeS: null, putRightS: null })).toBe('earlier-warning');
  });

  test('what nothing avoids once it has begun wants a second line of protection', () => {
    expect(left({ lastChanceS: 0 })).toBe('second-line');
  });
});

test('what a fault case is about: a piece of equipment, what a probe regulates, what hangs on a circuit or an RCD', () => {
  const context = judging(base);
  const keys = (kind: CaseThing['kind'], key: string) => concerned(context, { kind, key, name: key }).map((e) => e.key);
  expect(keys('equipment', 'skimmer')).toEqual(['skimmer']);
  expect(keys('sensor', 'sump-temperature')).toEqual(['heater-1', 'heater-2']);
  expect(keys('sensor', 'sump-level')).toEqual(['top-off']);
  expect(keys('circuit', 'heat')).toEqual(['heater-1']);
  expect(keys('rcd', 'rcd-3')).toEqual(['circulation-pump', 'air-blower']);
  expect(keys('site', 'harbour')).toHaveLength(7);
});

test('every remedy of every failure mode is known and told in words', () => {
  const ids = FAULTS.flatMap(({ remedies }) => [...remedies]);
  expect(ids.length).toBeGreaterThan(50);
  for (const id of ids) expect(isRemedy(id) ? remedyText(id) : id).toMatch(/^[A-Z].{15,}/);
  expect(isRemedy('prayer')).toBe(false);
});
