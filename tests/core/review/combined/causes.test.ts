import { airLine } from '#core/review/combined/causes/air-line';
import { type Cause, graveAlone } from '#core/review/combined/causes/cause';
import { person } from '#core/review/combined/causes/person';
import { probe } from '#core/review/combined/causes/probe';
import { relay } from '#core/review/combined/causes/relay';
import { reservoir } from '#core/review/combined/causes/reservoir';
import { supply } from '#core/review/combined/causes/supply';
import { well } from '#core/review/combined/causes/well';
import { failing } from '#core/review/combined/joint';
import { gravestOutcome } from '#core/review/gravest';
import { judge } from '#core/review/judge';
import { describe, expect, test } from 'vitest';
import { airBlower, heater, plan, returnPump, skimmer, thermostat, topOff } from '../../../_support/build-equipment';
import { facility, room } from '../../../_support/build-facility';
import { sensor, system } from '../../../_support/build-system';
import { withSystem } from '../../../_support/with-part';
import { subject } from '../trying';
import { looking, unreviewed } from './looking';

/** Two heaters, each too weak to overheat the water by itself. */
const two = (relays: [string?, string?]) =>
  relays.map((name, i) =>
    heater({ key: `h${i}`, name: `H${i}`, ratedW: 130, relay: name, plan: plan({ regulation: thermostat() }) }),
  );
const kept = (relays: [string?, string?]) => ({
  ...withSystem({ equipment: [...two(relays), returnPump(), airBlower()], states: [] }),
  rooms: [room({ temperatureC: 18 })],
});
const found = (cause: Cause, site: Parameters<typeof unreviewed>[0]) =>
  cause(unreviewed(site)).map((one) => ({ ...one, verdict: one.judge() }));

describe('a relay board', () => {
  test('that sticks overheats with two heaters, where neither does by itself', () => {
    const look = unreviewed(kept(['Board 1', 'Board 1']));
    const [off, stuck] = relay(look);
    expect(off?.parts).toMatchObject([{ fault: 'heater-off' }, { fault: 'heater-off' }]);
    expect(stuck?.because).toBe('all are switched by Board 1, whose contacts stick');
    expect(stuck?.judge().outcomes[0]?.harm).toMatchObject({ class: 'animals', direction: 'above' });
    for (const key of ['h0', 'h1']) {
      const alone = failing(look.facility, look.system, key, 'stuck-on');
      if (!alone) throw new Error('a heater can stick');
      expect(judge(look.context, alone).claimed.verdict).toBe('holds');
    }
  });

  test('with one thing on it is no common cause', () => {
    expect(found(relay, kept(['Board 1', 'Board 2']))).toEqual([]);
    expect(found(relay, kept([undefined, undefined]))).toEqual([]);
  });
});

test('a probe well makes one of two probes that vote', () => {
  const sensors = ['a', 'b'];
  const site = (wells: [string?, string?]) => ({
    ...withSystem({
      equipment: [
        heater({ ratedW: 600, plan: plan({ regulation: thermostat({ sensors, vote: 'highest' }) }) }),
        returnPump(),
        airBlower(),
      ],
      sensors: sensors.map((key, i) => sensor({ key, name: key, well: wells[i] })),
      alarms: [],
      states: [],
    }),
    rooms: [room({ temperatureC: 18 })],
  });
  const look = unreviewed(site(['Well 1', 'Well 1']));
  const [one] = well(look);
  expect(judge(look.context, subject(look.context, 'control-probe-out', 'a')).claimed.verdict).toBe('holds');
  expect(one?.judge().outcomes[0]?.harm).toMatchObject({ class: 'animals', direction: 'above' });
  expect(well(unreviewed(site(['Well 1', 'Well 2'])))).toEqual([]);
});

test('a reservoir that is empty stops everything that draws from it', () => {
  const second = topOff({ key: 'top-off-2', name: 'Top-off 2' });
  const site = withSystem({ equipment: [returnPump(), airBlower(), topOff(), second], states: [] });
  const [one] = found(reservoir, site);
  expect(one?.parts.map((part) => part.kind === 'fault' && part.thing.key)).toEqual(['top-off', 'top-off-2']);
  const alone = judge(
    unreviewed(site).context,
    failing(site, site.systems[0] ?? system(), 'top-off', 'dead') ?? never(),
  );
  expect(one?.verdict.verdict).not.toBe('not-assessed');
  expect(gravestOutcome(one?.verdict ?? alone.claimed).rank).toBeLessThanOrEqual(gravestOutcome(alone.claimed).rank);
});

function never(): never {
  throw new Error('the catalogue knows this failure');
}

test('a circuit, an RCD group, the utility and a probe are told by what fails together, as the review judged them', () => {
  const look = looking(
    withSystem({
      equipment: [...two([undefined, undefined]), returnPump(), skimmer(), airBlower()],
      states: [],
      alarms: [],
    }),
  );
  const causes = supply(look);
  expect(causes.map(({ because }) => because)).toEqual(
    expect.arrayContaining(['all hang on Pumps', 'all hang on Heat', 'all hang on the utility']),
  );
  const pumps = causes.find(({ because }) => because === 'all hang on Pumps');
  const judged = look.review.cases.find(({ id }) => id === 'circuit-trips:pumps:normal');
  expect(pumps?.judge()).toBe(judged?.claimed);
  expect(pumps?.parts).toMatchObject([{ fault: 'return-stops' }, { fault: 'skimmer-stops' }]);
  expect(probe(look).map(({ parts }) => parts.map((part) => part.kind === 'fault' && part.thing.key))).toContainEqual([
    'h0',
    'h1',
  ]);
  const ids = pumps?.parts.flatMap((part) => (part.kind === 'fault' ? [`${part.fault}:${part.thing.key}:normal`] : []));
  const worst = look.tried.filter(({ case: c }) => ids?.includes(c.id)).map(({ subject }) => subject);
  expect(pumps?.alone).toBe(graveAlone(look, worst));
});

test('an air line that feeds two tanks is one', () => {
  const stones = [
    { tank: 'display', count: 1 },
    { tank: 'sump', count: 1 },
  ];
  const look = looking(withSystem({ equipment: [returnPump(), airBlower({ stones })], states: [], alarms: [] }));
  expect(airLine(look).map(({ parts }) => parts.map((part) => part.kind === 'fault' && part.thing.key))).toEqual([
    ['display', 'sump'],
  ]);
});

test('a person who should end a state and is the one who would notice is missed by the next on duty alone', () => {
  const states = [
    { name: 'feeding' as const, endsBy: 'person' as const, lastsMin: { value: 10, origin: 'entered' as const } },
  ];
  const base = facility();
  const pause = withSystem({
    states,
    stock: system().stock.map((one) => ({ ...one, count: 40 })),
    equipment: [returnPump()],
  });
  const look = looking({ ...pause, rooms: [room({ temperatureC: 24 })], shifts: base.shifts });
  const [one] = person(look);
  const alone = look.review.cases.find(({ fault }) => fault === 'feeding-never-ends');
  expect(one?.because).toContain('one person');
  const [there, gone] = [alone?.claimed.outcomes[0], one?.judge().outcomes[0]];
  expect(there?.harmS).toEqual(gone?.harmS);
  // Whoever is on at 09:00 would have known within the day; without them the night shift is the first to come.
  expect(gone?.putRightS[9]).toBeGreaterThan(there?.putRightS[9] ?? Number.POSITIVE_INFINITY);
});
