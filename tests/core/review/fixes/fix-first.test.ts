import type { Facility } from '#core/facility/facility';
import { candidatesOf } from '#core/review/fixes/candidates';
import { changesOf, effectsOf } from '#core/review/fixes/effects';
import { fixFirst } from '#core/review/fixes/fix-first';
import { tryWater } from '#core/review/fixes/try-water';
import type { FixFirst } from '#core/review/study';
import { describe, expect, test } from 'vitest';
import { heater, plan, thermostat } from '../../../_support/build-equipment';
import { facility, room } from '../../../_support/build-facility';
import { cutOutOf } from '../../../_support/build-protection';
import { smallSystem } from '../../../_support/small-facility';
import { looking } from '../combined/looking';
import { untested } from '../trying';

/** One tank with a heater that may overheat it, once stuck, before anybody comes. */
function hot(ratedW: number, temperatureC = 23, more: Partial<Facility> = {}): Facility {
  const base = smallSystem();
  const regulation = thermostat({ sensors: ['display-temperature'], lowC: 24.5, highC: 25.5 });
  const heats = heater({ tank: 'display', ratedW, wattsRange: undefined, plan: plan({ regulation }) });
  const its = { ...base, equipment: [heats, ...base.equipment.filter(({ type }) => type !== 'heater')] };
  return facility({ rooms: [room({ temperatureC })], systems: [its], ...more });
}
const fixed = (site: Facility): FixFirst => fixFirst(looking(site));
const casesOf = (effects: { case: string }[] | undefined) => effects?.map((effect) => effect.case);

describe('what to fix first', () => {
  test('is a cut-out where a heater that sticks is what nobody can come in time for', () => {
    const found = fixed(hot(900));
    const [first] = found.alone;
    expect(first).toMatchObject({ id: 'cut-out:heater-1', remedy: 'cut-out', title: 'A high cut-out on Heater 1' });
    expect(casesOf(first?.wins)).toContain('heater-on:heater-1:normal');
    expect(found.order[0]?.fix).toBe('cut-out:heater-1');
    expect(found.order.at(-1)?.left).toBeLessThan(found.open);
  });

  test('tells a side effect: a second heater keeps it warm, and can stick as well', () => {
    const look = looking(hot(900, 2));
    const judged = look.tried.map(
      ({ subject, case: c }) => [c.id, { subject, title: c.title, judgement: c.claimed }] as const,
    );
    const stand = { ...look, cases: new Map(judged) };
    const second = candidatesOf(stand).find(({ id }) => id === 'second-heater:heater-1');
    if (!second) throw new Error('a second heater can be fitted');
    const changes = changesOf(stand, tryWater(stand, look.on, second) ?? new Map());
    expect(casesOf(effectsOf(changes, 1))).toContain('heater-off:heater-1:normal');
    expect(casesOf(effectsOf(changes, -1))).toContain('heater-on:proposed-heater-1:normal');
  });

  test('is a test where a safeguard is counted on and not tested, in that column', () => {
    const cut = cutOutOf('display', 'cut');
    const site = hot(900);
    const systems = site.systems.map((one) => ({
      ...one,
      safeguards: [untested(cut.safeguard)],
      equipment: one.equipment.map((e) =>
        e.key === 'heater-1' ? { ...e, plan: { ...e.plan, cutOuts: [cut.line] } } : e,
      ),
    }));
    const proof = fixed({ ...site, systems }).alone.find(({ id }) => id === 'test-safeguards:cut');
    expect(proof).toMatchObject({ column: 'tested', title: 'A test of cut that works', losses: [] });
    expect(casesOf(proof?.wins)).toContain('heater-on:heater-1:normal');
  });
});

/** Sites with several things to mend. */
const poor: [string, Facility][] = [
  ['one tank without rounds', hot(900, 18, { rounds: [] })],
  ['one tank with people by day alone', hot(500, 15, { rounds: [], shifts: facility().shifts.slice(0, 1) })],
];

describe.each(poor)('greedily, for %s', (_, site) => {
  const found = fixed(site);
  const changes = found.alone.filter(({ column }) => column === 'claimed');

  test('the first is the best alone, no step opens more than it closes, and all together leave no more than the best', () => {
    expect(changes.length).toBeGreaterThan(1);
    expect(found.order[0]?.fix).toBe(changes[0]?.id);
    const left = [found.open, ...found.order.map((step) => step.left)];
    for (const [i, step] of found.order.entries()) {
      expect(step.left).toBeLessThanOrEqual(left[i] ?? 0);
      expect(step.wins).toBeGreaterThan(0);
    }
    expect(found.order.at(-1)?.left).toBeLessThanOrEqual(found.order[0]?.left ?? 0);
  });

  test('the order in which the site is described makes no difference', () => {
    const turned = <T>(list: readonly T[]) => [...list].reverse();
    const systems = site.systems.map((one) => ({
      ...one,
      equipment: turned(one.equipment),
      sensors: turned(one.sensors),
    }));
    const other = fixed({ ...site, systems, circuits: turned(site.circuits) });
    const ids = (all: FixFirst) => [all.alone.map(({ id }) => id), all.order.map(({ fix }) => fix)];
    expect(ids(other)).toEqual(ids(found));
  });
});
