import type { Facility } from '#core/facility/facility';
import { safeguardsOf } from '#core/plans/credit';
import { deadSafeguardsOf, withDead } from '#core/review/combined/dead-safeguards';
import { type Look, lookAt } from '#core/review/combined/look';
import { contextOf } from '#core/review/context';
import { gravestOutcome } from '#core/review/gravest';
import { reviewSystem } from '#core/review/review-system';
import { describe, expect, test } from 'vitest';
import { airBlower, cutOut, heater, plan, returnPump, thermostat } from '../../../_support/build-equipment';
import { facility, room } from '../../../_support/build-facility';
import { REVIEWED_ON, system } from '../../../_support/build-system';
import { smallSystem } from '../../../_support/small-facility';
import { withSystem } from '../../../_support/with-part';

function looking(site: Facility): Look {
  const [first] = site.systems;
  if (!first) throw new Error('a site without a system');
  return lookAt(site, first, REVIEWED_ON, reviewSystem(site, first, REVIEWED_ON));
}

/** Fault cases with every safeguard dead, each judged from nothing, with nothing left out. */
function bruteForce({ facility: site, system: its }: Look, tried: Look['tried']): Map<string, [number, number]> {
  const found = new Map<string, [number, number]>();
  for (const { key } of safeguardsOf(site, its)) {
    const context = contextOf(site, its, REVIEWED_ON, key);
    for (const { subject, case: c } of tried) {
      const { rank, spareS } = gravestOutcome(withDead({ context, view: context.view('nominal') }, subject, null));
      found.set(`${c.id} without ${key}`, [rank, spareS]);
    }
  }
  return found;
}

/** A heater that only its cut-out stops, a pump, air on a battery, a pause with a timer: each safeguard matters to some case. */
const few = {
  equipment: [
    heater({ ratedW: 600, plan: plan({ cutOuts: [cutOut()], regulation: thermostat() }) }),
    returnPump(),
    airBlower(),
  ],
  states: system().states.filter(({ name }) => name === 'feeding'),
};
const inWarmRoom = (site: Facility): Facility => ({ ...site, rooms: [room({ temperatureC: 23.5 })] });
/** One tank whose alarm, battery and cut-out are all that stands between a fault and the fish. */
const alone = () => {
  const base = smallSystem();
  const own = base.equipment.map((e) =>
    e.type === 'heater'
      ? heater({ ...e, ratedW: 700, plan: plan({ ...e.plan, cutOuts: [cutOut({ tank: 'display' })] }) })
      : e,
  );
  const its = { ...base, equipment: own, alarms: system().alarms.slice(0, 2), safeguards: system().safeguards };
  return { ...inWarmRoom(facility({ systems: [its] })), rounds: [] };
};

/** Sites, and how many of their fault cases are compared: every so-manieth. */
const sites: [string, Facility, number][] = [
  ['one tank where nobody watches but the alarms', alone(), 1],
  ['a site with rounds, a return and a pause', inWarmRoom(withSystem(few)), 15],
];

/** A cut-out that trips while nothing is asked to run moves the steps of a course, and its times by less than a hundredth of a second. */
function inHundredths(spareS: number | undefined): number | undefined {
  return spareS === undefined ? undefined : Math.round(100 * spareS) / 100;
}

describe.each(sites)('fault cases of %s with one safeguard dead', (_, site, every) => {
  const look = looking(site);
  const compared = look.tried.filter((_one, i) => i % every === 0);
  const pruned = compared.map((one) => deadSafeguardsOf(look, one));

  test('come out as when nothing is left out: what was not tried is as the fault alone', () => {
    const all = bruteForce(look, compared);
    const told = new Map(pruned.flatMap(({ combinations }) => combinations).map((one) => [one.id, one]));
    for (const { subject, case: c } of compared) {
      const alone = gravestOutcome(c.claimed);
      for (const { key } of safeguardsOf(site, look.system)) {
        const [rank, spareS] = all.get(`${c.id} without ${key}`) ?? [];
        const id = `safeguard-dead:${subject.fault.id}:${subject.thing.key}+without:${key}:${subject.state}`;
        const one = told.get(id);
        if (one) expect([inHundredths(one.spareS ?? spareS), id]).toEqual([inHundredths(spareS), id]);
        else expect([rank, inHundredths(spareS), id]).toEqual([alone.rank, inHundredths(alone.spareS), id]);
      }
    }
  });

  test('are tried where something changes, and left out where nothing does', () => {
    const tried = pruned.reduce((sum, one) => sum + one.tried, 0);
    const pairs = compared.length * safeguardsOf(site, look.system).length;
    expect(tried).toBeGreaterThan(0);
    expect(tried).toBeLessThan(pairs / 2);
  });
});

test('a welded heater is held by its cut-out, and kills without it', () => {
  const look = looking(alone());
  const found = look.tried
    .filter(({ case: c }) => c.id === 'heater-on:heater-1:normal')
    .flatMap((one) => deadSafeguardsOf(look, one).combinations)
    .find(({ id }) => id === 'safeguard-dead:heater-on:heater-1+without:heater-1-cut-out:normal');
  expect(found).toMatchObject({ alone: 'holds', harm: { class: 'animals' }, perYear: null });
});
