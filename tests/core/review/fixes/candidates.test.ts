import type { Facility } from '#core/facility/facility';
import { candidatesOf, changed } from '#core/review/fixes/candidates';
import { PROPOSED } from '#core/review/fixes/edit';
import { REMEDIES } from '#core/review/fixes/catalogue';
import { isOpen, judgedIn, sceneOf, type Stand, subjectsById } from '#core/review/fixes/stand';
import { checkReferences } from '#core/facility/check-references';
import { tryPeople, watch } from '#core/review/fixes/try-people';
import { gravestOutcome } from '#core/review/gravest';
import { describe, expect, test } from 'vitest';
import {
  airBlower,
  chiller,
  heater,
  levelControl,
  plan,
  returnPump,
  skimmer,
  thermostat,
  topOff,
} from '../../../_support/build-equipment';
import { circuit, facility, room } from '../../../_support/build-facility';
import { alarm, REVIEWED_ON, system, tank } from '../../../_support/build-system';
import { smallSystem } from '../../../_support/small-facility';
import { withSystem } from '../../../_support/with-part';

/** A system with nothing that protects it, on a site where people are there on Mondays and hardly look. */
function bare(): Facility {
  const states = [{ state: 'feeding' as const, then: 'off' as const, by: 'controller' as const }];
  const unlimited = levelControl({ runLimitMin: undefined, runLimitSafeguard: undefined });
  const given = withSystem({
    equipment: [
      heater({ plan: plan({ regulation: thermostat() }) }),
      chiller({ plan: plan({ regulation: thermostat({ lowC: 26, highC: 26.5 }) }) }),
      returnPump({ plan: plan({ states }) }),
      skimmer({ plan: plan() }),
      topOff({ plan: plan({ regulation: unlimited }) }),
      airBlower({ circuit: 'pumps', plan: plan({ states }) }),
      { ...airBlower({ key: 'gas', name: 'Gas', stones: undefined, gasTransferLPerH: undefined }), type: 'co2' },
    ],
    tanks: system().tanks.map((one) =>
      one.key === 'display' ? tank({ siphonBreakMm: undefined, siphonSafeguard: undefined }) : one,
    ),
    sensors: system().sensors.filter(({ key }) => key === 'sump-temperature' || key === 'sump-level'),
    alarms: [alarm({ answeredBy: 'nobody', on: { kind: 'sensor', sensor: 'sump-temperature', above: 27 } })],
    states: [{ name: 'feeding', endsBy: 'person' }],
    safeguards: [],
  });
  const { watchdog: _, ...site } = given.site;
  return {
    ...given,
    site,
    circuits: given.circuits.map((one) =>
      circuit({ ...one, backedBy: [], rcd: one.key === 'heat' ? 'rcd-9' : 'rcd-1' }),
    ),
    rounds: given.rounds.map((one) => ({ ...one, sees: ['animals'] })),
    shifts: given.shifts.map((one) => ({ ...one, days: ['mon'] })),
  };
}

function standOf(given: Facility): Stand {
  const [its] = given.systems;
  const scene = sceneOf(given, its?.key ?? '', REVIEWED_ON);
  const cases = new Map([...subjectsById(scene)].map(([id, subject]) => [id, judgedIn(scene, subject)]));
  return { ...scene, cases };
}

describe('every remedy', () => {
  const given = bare();
  const stand = { ...sceneOf(given, given.systems[0]?.key ?? '', REVIEWED_ON), cases: new Map() };
  const candidates = candidatesOf(stand);

  test('can be made somewhere in a system that has nothing, each place by an id of its own', () => {
    const offered = new Set(candidates.map(({ remedy }) => remedy));
    expect(REMEDIES.filter((remedy) => !offered.has(remedy)).map(({ id }) => id)).toEqual([]);
    expect(new Set(candidates.map(({ id }) => id)).size).toBe(candidates.length);
  });

  test('changes the description into another that can be reckoned with, and leaves the given one as it is', () => {
    const before = JSON.stringify(given);
    for (const one of candidates) {
      const site = changed(stand, one);
      expect([one.id, JSON.stringify(site) === before]).toEqual([one.id, false]);
      const { view } = sceneOf(site, stand.system.key, REVIEWED_ON);
      expect([one.id, view.resolved.missing, view.nominal.restless]).toEqual([one.id, [], false]);
    }
    expect(JSON.stringify(given)).toBe(before);
  });

  test('can be made on top of all others: every key stays one of its own, whatever was proposed before', () => {
    const problems = (of: Facility) => checkReferences(of).map(({ message }) => message);
    const known = new Set(problems(given));
    let site = given;
    for (const { id } of candidates) {
      const [its] = site.systems;
      if (!its) throw new Error('the system is gone');
      const one = candidatesOf({ facility: site, system: its }).find((found) => found.id === id);
      if (one) site = changed({ facility: site, system: its }, one);
      // The safeguard of a line that is only proposed has no ledger yet.
      const wrong = problems(site).filter(
        (message) => !known.has(message) && !message.includes(`"${PROPOSED}" is none`),
      );
      expect([id, wrong]).toEqual([id, []]);
    }
  });
});

test('one run with every proposed alarm tells of each what a whole judgement with that one alone tells', () => {
  const base = smallSystem();
  const strong = base.equipment.map((e) =>
    e.type === 'heater' ? { ...e, ratedW: { value: 900, origin: 'entered' as const } } : e,
  );
  const site = facility({ rooms: [room({ temperatureC: 20 })], rounds: [], systems: [{ ...base, equipment: strong }] });
  const stand = standOf(site);
  const people = candidatesOf(stand).filter(({ remedy }) => remedy.changes === 'people');
  const watched = watch(stand, REVIEWED_ON, people);
  expect(people.length).toBeGreaterThan(4);
  for (const one of people) {
    const whole = sceneOf(changed(stand, one), base.key, REVIEWED_ON);
    const after = tryPeople(stand, REVIEWED_ON, watched, one);
    for (const [id, { judgement }] of stand.cases) {
      const subject = subjectsById(whole).get(id);
      if (!isOpen(judgement) || !subject) continue;
      const alone = gravestOutcome(judgedIn(whole, subject).judgement);
      const found = gravestOutcome(after.get(id)?.judgement ?? judgement);
      expect([one.id, id, found.rank]).toEqual([one.id, id, alone.rank]);
      // Another watch moves the steps of the integrator by less than its accuracy.
      if (Number.isFinite(alone.spareS)) expect(found.spareS).toBeCloseTo(alone.spareS, 1);
    }
  }
});
