import type { AlarmDefinition, AlarmSource } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { Equipment, Sensor } from '#core/facility/system';
import { upsetOf } from '#core/review/trial';
import { subjectsOf } from '#core/review/subjects';
import { contextOf } from '#core/review/context';
import { expect, test } from 'vitest';
import { alarm, REVIEWED_ON, sensor } from '../../_support/build-system';
import { bothLives, type Lives } from './both-lives';
import { dice } from './random-system';
import { richSite } from './rich-system';

const EVERY_S = 10;
/** Readings that pass until it is told: of the turn, of having settled, of the delay's end. */
const LATE_S = 4 * EVERY_S;
/** Faults by which equipment does other than it seems to be meant to, and by which it only seems so. */
const FAULTS = [
  'heater-off',
  'circuit-trips',
  'chiller-on',
  'overflow-blocked',
  'heater-set-wrong',
  'return-pumps-nothing',
];
const SYSTEMS = 8;

/** A random site with a meter on everything that draws power, and an alarm of every kind that goes by a number. */
function watched(seed: number, next: () => number): Facility {
  const site = richSite(seed);
  const [system] = site.systems;
  if (!system) throw new Error('a random site has a system');
  const equipment = system.equipment.map((one): Equipment => {
    const rated = one.ratedW?.value ?? 0;
    return rated > 4 ? { ...one, wattsRange: { minW: 0.8 * rated, maxW: 1.15 * rated } } : one;
  });
  const metered = equipment.filter(({ wattsRange }) => wattsRange);
  const meters = metered.map(({ key }): Sensor => {
    return sensor({ key: `w-${key}`, quantity: 'watts', tank: undefined, equipment: key });
  });
  const probe = system.sensors.find(({ quantity }) => quantity === 'temperature')?.key ?? '';
  const sources: AlarmSource[] = [
    ...metered.flatMap(({ key, ratedW }): AlarmSource[] => [
      { kind: 'watts', equipment: key },
      { kind: 'sensor', sensor: `w-${key}`, below: 0.5 * (ratedW?.value ?? 0) },
      { kind: 'run-limit', equipment: key, startsPerHour: 2 },
    ]),
    { kind: 'silent', gateway: 'gateway-1' },
    { kind: 'rate', sensor: probe, risesPerHour: 0.3, fallsPerHour: 0.3, overMin: 30 },
    { kind: 'sensor', sensor: probe, above: 24 + 3 * next(), below: 23 + next() },
  ];
  const alarms = sources.map((on, i): AlarmDefinition => {
    const delayS = [0, 60, 1200][Math.floor(3 * next())] ?? 0;
    return alarm({ key: `${on.kind} ${i}`, on, delayS, deadBand: 0.5 * next(), safeguard: undefined });
  });
  return { ...site, systems: [{ ...system, equipment, sensors: [...system.sensors, ...meters], alarms }] };
}

function livesOf(seed: number): Lives[] {
  const next = dice(seed + 31);
  const site = watched(seed, next);
  const [system] = site.systems;
  const fault = FAULTS[seed % FAULTS.length];
  const subject = system && subjectsOf(site, system).find((one) => one.fault.id === fault && one.state === 'normal');
  if (!subject) return [];
  const wrong = upsetOf(contextOf(site, system, REVIEWED_ON), subject);
  // Within one day of the healthy course, as far back as readings come.
  const hour = 5 + Math.floor(19 * next());
  return bothLives(site, { wrong: (upset) => Object.assign(upset, wrong), hours: 4, hour, everyS: EVERY_S });
}

test(`no alarm of ${SYSTEMS} random systems is raised in the review before readings of the same course raise it`, () => {
  const all = Array.from({ length: SYSTEMS }, (_, i) => i + 1).flatMap((seed) =>
    livesOf(seed).map((one) => ({ seed, ...one })),
  );
  const early = all.filter(({ review = Infinity, live = Infinity }) => review < live - LATE_S);
  expect(early).toEqual([]);
  // It means something only where much is raised, and not all of it at once.
  const raised = all.flatMap(({ review }) => review ?? []);
  expect(raised.length).toBeGreaterThan(2 * SYSTEMS);
  expect(raised.filter((atS) => atS > 1800).length).toBeGreaterThan(0);
}, 60_000);
