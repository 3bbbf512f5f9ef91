import type { Facility } from '#core/facility/facility';
import { safeguardsOf } from '#core/plans/credit';
import { deadSafeguardsOf, withDead } from '#core/review/combined/dead-safeguards';
import { type Look, lookAt } from '#core/review/combined/look';
import { contextOf } from '#core/review/context';
import { gravestOutcome } from '#core/review/gravest';
import { reviewSystem } from '#core/review/review-system';
import { describe, expect, test } from 'vitest';
import { airBlower, cutOut, heater, plan, returnPump, thermostat } from '../../../_support/build-equipment';
import { room } from '../../../_support/build-facility';
import { REVIEWED_ON, system } from '../../../_support/build-system';
import { withSystem } from '../../../_support/with-part';

function looking(site: Facility): Look {
  const [first] = site.systems;
  if (!first) throw new Error('a site without a system');
  return lookAt(site, first, REVIEWED_ON, reviewSystem(site, first, REVIEWED_ON));
}

/** Every fault case with every safeguard dead, each judged from nothing, with nothing left out. */
function bruteForce({ facility: site, system: its, tried }: Look): Map<string, [number, number]> {
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
const sites: [string, Facility][] = [
  ['a site with rounds', inWarmRoom(withSystem(few))],
  ['one where nobody watches but the alarms', { ...inWarmRoom(withSystem({ ...few, states: [] })), rounds: [] }],
];

describe.each(sites)('fault cases of %s with one safeguard dead', (_, site) => {
  const look = looking(site);
  const pruned = look.tried.map((one) => deadSafeguardsOf(look, one));

  test('come out as when nothing is left out: what was not tried is as the fault alone', () => {
    const all = bruteForce(look);
    const told = new Map(pruned.flatMap(({ combinations }) => combinations).map((one) => [one.id, one]));
    for (const { subject, case: c } of look.tried) {
      const alone = gravestOutcome(c.claimed);
      for (const { key } of safeguardsOf(site, look.system)) {
        const [rank, spareS] = all.get(`${c.id} without ${key}`) ?? [];
        const id = `safeguard-dead:${subject.fault.id}:${subject.thing.key}+without:${key}:${subject.state}`;
        const one = told.get(id);
        if (one) expect([one.spareS ?? spareS, id]).toEqual([spareS, id]);
        else expect([rank, spareS, id]).toEqual([alone.rank, alone.spareS, id]);
      }
    }
  });

  test('are tried where something changes, and left out where nothing does', () => {
    const tried = pruned.reduce((sum, one) => sum + one.tried, 0);
    const pairs = look.tried.length * safeguardsOf(site, look.system).length;
    expect(tried).toBeGreaterThan(0);
    expect(tried).toBeLessThan(pairs / 2);
  });
});

test('a welded heater is held by its cut-out, and kills without it', () => {
  const look = looking(inWarmRoom(withSystem(few)));
  const found = look.tried
    .flatMap((one) => deadSafeguardsOf(look, one).combinations)
    .find(({ id }) => id === 'safeguard-dead:heater-on:heater-1+without:heater-1-cut-out:normal');
  expect(found).toMatchObject({ alone: 'holds', harm: { class: 'animals', what: 'rise-24h' }, perYear: null });
});
