import { type CallStep, STEP_WHOM } from '#core/alarms/steps';
import { FACILITY_FORMAT, type Facility } from '#core/facility/facility';
import { type Circuit, DAYS, type Monitor, type QuietTime, type Room, type Site } from '#core/facility/site';
import { LIMIT_QUANTITIES, type ToleranceProfile } from '#core/facility/stock';
import { SYSTEM_KINDS } from '#core/facility/system';
import type { Safeguard } from '#core/plans/safeguard';
import { type Person, ROLES, type Shift } from '#core/rota/rota';
import { LIMIT_BOUNDS } from '#shape/facility/tolerance-profile';
import { addDays } from '#core/time/add-days';
import { ASPECTS, type RoundSlot } from '#core/rounds/slot';
import fc from 'fast-check';
import { anyFigure, anyName, anyNumber, anyText, maybe, someOf } from './any-figure';
import { anyBounds, anyTime, maybeSafeguard } from './any-plan';
import { anySafeguards } from './any-safeguard';
import { anyHours, anySheets } from './any-sheets';
import { anySystem } from './any-system';

const minutes = () => anyFigure(0, 600);

function anySite(safeguards: readonly Safeguard[], people: readonly string[]): fc.Arbitrary<Site> {
  const starts = safeguards.find(({ kind }) => kind === 'standby-power')?.key;
  const generator = {
    startsAfterS: maybe(anyFigure(0, 600)),
    fuelH: maybe(anyFigure(0, 99)),
    ratedW: maybe(minutes()),
  };
  return fc.record({
    key: fc.constant('site'),
    name: anyName(),
    zone: fc.constantFrom('Europe/London', 'America/New_York', 'Asia/Kathmandu', 'UTC'),
    altitudeM: maybe(anyFigure(-400, 5000)),
    answerOnSiteMin: maybe(minutes()),
    answerOnCallMin: maybe(minutes()),
    answerOnSiteNightMin: maybe(minutes()),
    answerOnCallNightMin: maybe(minutes()),
    generator:
      starts === undefined
        ? fc.constant(undefined)
        : maybe(fc.record({ ...generator, safeguard: fc.constant(starts) })),
    mains: maybe(fc.record({ oxidantMgL: maybe(anyFigure(0, 5)), temperatureC: maybe(anyFigure(0, 30)) })),
    powerCut: maybe(fc.record({ means: anyText(), repairMin: minutes() })),
    keepReadingsMonths: maybe(fc.integer({ min: 4, max: 1200 })),
    openingHours: maybe(anyHours()),
    holidays: maybe(fc.constant([{ on: '2026-12-25', why: 'closed' }, { on: '2027-01-01' }])),
    quietHours: maybe(anyQuiet()),
    waysTo: maybe(fc.constant([{ site: 'other', min: 45 }])),
    testCallEachDays: maybe(fc.integer({ min: 1, max: 366 })),
    callSteps: maybe(anySteps()),
    competences: fc.constant([{ key: 'work', name: 'Put the ozone back', types: ['ozone' as const] }]),
    repeatCallsMin: maybe(fc.integer({ min: 5, max: 240 })),
    watchdog: maybe(
      fc.record({
        afterMin: anyNumber(0, 60),
        answeredBy: fc.oneof(fc.constantFrom('rota' as const, 'nobody' as const), someOf(people, 1)),
        safeguard: maybeSafeguard(safeguards, 'alarm'),
      }),
    ),
  });
}

function anyQuiet(): fc.Arbitrary<QuietTime[]> {
  const days = fc.shuffledSubarray([...DAYS], { minLength: 1 });
  return fc.array(fc.record({ days, from: anyTime(), to: anyTime(), why: maybe(anyName()) }), {
    minLength: 1,
    maxLength: 2,
  }) as fc.Arbitrary<QuietTime[]>;
}

function anySteps(): fc.Arbitrary<CallStep[]> {
  const whom = fc.constantFrom(...STEP_WHOM);
  return fc.uniqueArray(fc.integer({ min: 1, max: 480 }), { maxLength: 7 }).chain((later) => {
    const after = [0, ...later.sort((a, b) => a - b)];
    return fc.tuple(...after.map((afterMin) => fc.record({ whom, afterMin: fc.constant(afterMin) })));
  });
}

function anyRooms(): fc.Arbitrary<Room[]> {
  const byHour = (min: number, max: number) =>
    fc.oneof(anyFigure(min, max), fc.array(anyNumber(min, max), { minLength: 24, maxLength: 24 }));
  const room = fc.record({ name: anyName(), temperatureC: byHour(-30, 60), humidityPct: byHour(0, 100) });
  return keyed('room', room, 1);
}

function anyCircuits(site: Site, safeguards: readonly Safeguard[]): fc.Arbitrary<Circuit[]> {
  const ups = fc.record({ upsMin: maybe(minutes()), upsSafeguard: maybeSafeguard(safeguards, 'standby-power') });
  const base = fc.record({
    name: anyName(),
    breakerA: maybe(anyFigure(1, 63)),
    volts: maybe(anyFigure(100, 400)),
    rcd: maybe(anyName()),
    backedBy: someOf(site.generator ? (['ups', 'generator'] as const) : (['ups'] as const)),
  });
  const circuit = fc.tuple(base, ups).map(([one, more]) => (one.backedBy.includes('ups') ? { ...one, ...more } : one));
  return keyed('circuit', circuit, 1);
}

function anyProfiles(): fc.Arbitrary<ToleranceProfile[]> {
  const band = (max: number) =>
    fc.tuple(anyNumber(0, max), anyNumber(0, max)).map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]);
  const usual = fc.record({ temperatureC: band(40), salinity: band(40), oxygenMgL: anyNumber(0, 20) });
  const limit = fc.record({ quantity: fc.constantFrom(...LIMIT_QUANTITIES), forMin: anyNumber(0, 600) });
  const bounded = limit.chain((one) =>
    anyBounds(...LIMIT_BOUNDS[one.quantity]).map((bounds) => ({ ...one, ...bounds })),
  );
  const limits = fc.array(bounded, { maxLength: 3 });
  const confidence = fc.constantFrom('good' as const, 'fair' as const, 'low' as const);
  return keyed('profile', fc.record({ name: anyName(), usual, limits, source: anyText(), confidence }));
}

function anyShifts(people: readonly string[]): fc.Arbitrary<Shift[]> {
  const shift = fc.record({
    kind: fc.constantFrom('on-site' as const, 'on-call' as const),
    people: someOf(people, 1),
    days: someOf(DAYS, 1),
    from: anyTime(),
    to: anyTime(),
    ends: maybe(anyDay()),
    except: maybe(fc.array(fc.record({ on: anyDay(), why: maybe(anyName()) }), { minLength: 1, maxLength: 3 })),
  });
  const recurring = fc.tuple(
    shift,
    fc.oneof(
      fc.constant({}),
      fc.record({ starts: fc.constant('2024-01-01'), everyWeeks: maybe(fc.integer({ min: 2, max: 52 })) }),
      fc.constant({ starts: '2024-01-01', rule: 'FREQ=DAILY;INTERVAL=4' }),
    ),
  );
  return keyed(
    'shift',
    recurring.map(([one, more]) => ({ ...one, ...more })),
  );
}

/** A day after 2024. */
function anyDay(): fc.Arbitrary<string> {
  return fc.integer({ min: 0, max: 900 }).map((days) => addDays('2025-01-01', days));
}

function anyRounds(systems: readonly string[]): fc.Arbitrary<RoundSlot[]> {
  const sees = someOf(ASPECTS, 1);
  const round = fc.record({
    name: anyName(),
    days: someOf(DAYS, 1),
    at: anyTime(),
    systems: maybe(someOf(systems)),
    sees,
  });
  return keyed('round', round);
}

function anyMonitors(circuits: readonly Circuit[]): fc.Arbitrary<Monitor[]> {
  const kind = fc.constantFrom('gateway' as const, 'host' as const, 'router' as const, 'mail' as const);
  const circuit = maybe(fc.constantFrom(...circuits.map(({ key }) => key)));
  return keyed('monitor', fc.record({ name: anyName(), kind, circuit }));
}

function keyed<T extends object>(
  noun: string,
  member: fc.Arbitrary<T>,
  minLength = 0,
): fc.Arbitrary<({ key: string } & T)[]> {
  return fc
    .array(member, { minLength, maxLength: minLength + 2 })
    .map((list) => list.map((one, at) => ({ key: `${noun}-${at}`, ...one })));
}

/** Somebody of the rota, with a competence of the site now and then. */
function anyPerson(): fc.Arbitrary<Omit<Person, 'key'>> {
  const held = fc.record({
    competence: fc.constant('work'),
    until: maybe(anyDay()),
    attestedBy: maybe(anyName()),
  });
  return fc.record({
    name: anyName(),
    role: fc.constantFrom(...ROLES),
    travelMin: maybe(minutes()),
    quiet: maybe(fc.record({ from: anyTime(), to: anyTime() })),
    competences: maybe(fc.tuple(held)),
  });
}

/** A valid facility of one to three systems, every field of every noun given now and then. */
export function anyFacility(): fc.Arbitrary<Facility> {
  const start = fc.record({
    safeguards: anySafeguards('site'),
    people: keyed<Omit<Person, 'key'>>('person', anyPerson(), 1),
    rooms: anyRooms(),
  });
  return fc.tuple(start, anyProfiles(), fc.integer({ min: 1, max: 3 })).chain(([ground, profiles, many]) => {
    const people = ground.people.map(({ key }) => key);
    const systems = Array.from({ length: many }, (_, at) => `system-${at}`);
    return anySite(ground.safeguards, people).chain((site) =>
      anyCircuits(site, ground.safeguards).chain((circuits) =>
        anyMonitors(circuits).chain((monitors) => {
          const offered = {
            rooms: ground.rooms.map(({ key }) => key),
            circuits: circuits.map(({ key }) => key),
            gateways: monitors.filter(({ kind }) => kind === 'gateway').map(({ key }) => key),
            people,
            profiles: [...SYSTEM_KINDS, ...profiles.map(({ key }) => key)],
          };
          return fc
            .record({
              format: fc.constant(FACILITY_FORMAT),
              site: fc.constant(site),
              rooms: fc.constant(ground.rooms),
              circuits: fc.constant(circuits),
              monitors: fc.constant(monitors),
              safeguards: fc.constant(ground.safeguards),
              people: fc.constant(ground.people),
              shifts: anyShifts(people),
              rounds: anyRounds(systems),
              profiles: fc.constant(profiles),
              systems: fc.tuple(...systems.map((key) => anySystem(key, offered))),
            })
            .chain((bare) => maybe(anySheets(bare.systems)).map((sheets) => ({ ...bare, sheets })));
        }),
      ),
    );
  });
}
