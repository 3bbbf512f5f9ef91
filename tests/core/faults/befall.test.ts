import { describe, expect, test } from 'vitest';
import { FAULTS } from '#core/faults/catalogue';
import type { Fault } from '#core/faults/fault';
import { noUpset } from '#core/faults/upset';
import { chiller, drainValve, filter } from '../../_support/build-equipment';
import { circuit, facility, site } from '../../_support/build-facility';
import { system } from '../../_support/build-system';
import { everyThing } from './every-thing';
import { courseOf, device, level, onlySystem, timeTo } from '../simulate/course';

const wide = everyThing();
const wideSystem = onlySystem(wide);
/** A plainer one, on which it is watched what comes of some. */
const base = facility();
const everything = facility({
  site: site({ generator: { safeguard: 'battery' } }),
  circuits: [...base.circuits, circuit({ key: 'spare', name: 'Spare', rcd: 'rcd-1' })],
  systems: [system({ equipment: [...system().equipment, chiller(), drainValve(), filter()] })],
});
const whole = onlySystem(everything);

function fault(id: string): Fault {
  const found = FAULTS.find((one) => one.id === id);
  if (!found) throw new Error(`no failure mode ${id}`);
  return found;
}

describe.each(FAULTS.map((one): [string, Fault] => [one.id, one]))('%s', (_, one) => {
  const things = one.things(wide, wideSystem);

  test('finds what it can befall, each by a key and name of its own', () => {
    expect(things.length).toBeGreaterThan(0);
    expect(new Set(things.map((thing) => `${thing.kind} ${thing.key}`)).size).toBe(things.length);
    for (const thing of things) expect(thing.name).not.toBe('');
  });

  test('changes something, differently for each thing, and the description not at all', () => {
    const before = JSON.stringify(wide);
    const upsets = things.map((thing) => {
      const upset = noUpset();
      one.befall(upset, thing, wide, wideSystem);
      return upset;
    });
    expect(JSON.stringify(wide)).toBe(before);
    for (const upset of upsets) expect(upset).not.toEqual(noUpset());
    for (const [i, upset] of upsets.entries())
      for (const other of upsets.slice(i + 1)) expect(other).not.toEqual(upset);
  });

  test('touches nothing where there is nothing of its kind', () => {
    const bare = facility({
      circuits: [],
      monitors: [],
      systems: [system({ equipment: [], sensors: [], tanks: [], states: [], stock: [], alarms: [] })],
    });
    const left = one.things(bare, onlySystem(bare)).map((thing) => thing.kind);
    // The utility fails and the room warms everywhere, and a state can be looked at without any equipment.
    expect(left.filter((kind) => kind !== 'site' && kind !== 'system' && kind !== 'room')).toEqual([]);
  });
});

/** What becomes of the whole system when a failure mode befalls a thing. */
function befallen(id: string, key: string, hours: number) {
  const thing = fault(id)
    .things(everything, whole)
    .find((one) => one.key === key);
  if (!thing) throw new Error(`${id} cannot befall ${key}`);
  return courseOf(everything, { hours, fault: (upset) => fault(id).befall(upset, thing, everything, whole) });
}

describe('made so, the machine behaves as the words say', () => {
  test('a dead return pump moves nothing and draws nothing; one that pumps nothing still draws', () => {
    expect(device(befallen('return-stops', 'return-pump', 0.1), 'return-pump')).toMatchObject({
      drawing: false,
      working: false,
    });
    expect(device(befallen('return-pumps-nothing', 'return-pump', 0.1), 'return-pump')).toMatchObject({
      drawing: true,
      working: false,
    });
  });

  test('an RCD stops every circuit behind it and none beside it', () => {
    const course = befallen('rcd-trips', 'rcd-1', 0.1);
    for (const one of course.machine.devices) {
      const { circuit: on } = whole.equipment.find((e) => e.key === one.key) ?? {};
      expect(one.powered).toBe(on !== 'pumps');
    }
  });

  test('a knocked level switch has the top-off fill the sump until its run limit stops it', () => {
    const course = befallen('skimmer-floods', 'skimmer', 30);
    expect(course.record.acted.has('top-off-run-limit')).toBe(true);
    expect(timeTo(course, 'water-on-floor')).toBe(Number.POSITIVE_INFINITY);
    expect(level(course, 'sump', 1800)).toBeGreaterThan(level(course, 'sump', 0) + 5);
  });

  test('a silent gateway leaves the water as it was, and no alarm that travels through it is heard', () => {
    const course = befallen('gateway-silent', 'gateway-1', 12);
    expect(course.record.harms).toEqual([]);
    expect([...course.record.alarms.keys()]).toEqual(['gateway-silent']);
  });
});
