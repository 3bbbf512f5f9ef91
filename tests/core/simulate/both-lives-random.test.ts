import type { AlarmDefinition, AlarmSource } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { Equipment, Sensor, System } from '#core/facility/system';
import { upsetOf } from '#core/review/trial';
import { subjectsOf } from '#core/review/subjects';
import { contextOf } from '#core/review/context';
import { expect, test } from 'vitest';
import { REVIEWED_ON, alarm, sensor } from '../../_support/build-system';
import { bothLives } from './both-lives';
import { dice } from './random-system';
import { richSite } from './rich-system';

const FROM = Number(process.env.FROM ?? 1);
const TO = Number(process.env.TO ?? 40);

function watched(site: Facility, next: () => number): Facility {
  const [system] = site.systems;
  if (!system) throw new Error('no system');
  const draws = system.equipment.filter(({ ratedW }) => (ratedW?.value ?? 0) > 4);
  const equipment = system.equipment.map((one): Equipment => {
    const rated = one.ratedW?.value ?? 0;
    return rated > 4 ? { ...one, wattsRange: { minW: 0.8 * rated, maxW: 1.15 * rated } } : one;
  });
  const meters = draws.map(
    ({ key }): Sensor => sensor({ key: `w-${key}`, quantity: 'watts', tank: undefined, equipment: key }),
  );
  const flow = sensor({ key: 'flow', quantity: 'flow', tank: system.tanks[0]?.key });
  const temps = system.sensors.filter(({ quantity }) => quantity === 'temperature').map(({ key }) => key);
  const delay = () => [0, 60, 300, 1200][Math.floor(4 * next())] ?? 0;
  const on: AlarmSource[] = [
    ...draws.map(({ key }): AlarmSource => ({ kind: 'watts', equipment: key })),
    ...draws.map(
      ({ key }): AlarmSource => ({ kind: 'run-limit', equipment: key, longerThanMin: 20 + Math.floor(100 * next()) }),
    ),
    ...draws.map(
      ({ key }): AlarmSource => ({ kind: 'run-limit', equipment: key, startsPerHour: 1 + Math.floor(3 * next()) }),
    ),
    ...draws.map(
      ({ key, ratedW }): AlarmSource => ({ kind: 'sensor', sensor: `w-${key}`, below: 0.5 * (ratedW?.value ?? 0) }),
    ),
    { kind: 'sensor', sensor: 'flow', below: 100 },
    { kind: 'silent', gateway: 'gateway-1' },
    ...temps.flatMap((key): AlarmSource[] => [
      { kind: 'rate', sensor: key, risesPerHour: 0.1, fallsPerHour: 0.1, overMin: 30 },
      { kind: 'frozen', sensor: key, within: 0 },
      { kind: 'silent-sensor', sensor: key },
      { kind: 'sensor', sensor: key, above: 24 + 3 * next() },
      { kind: 'sensor', sensor: key, below: 23 + 3 * next() },
    ]),
  ];
  const alarms = on.map(
    (one, i): AlarmDefinition =>
      alarm({
        key: `${i} ${JSON.stringify(one)}`,
        on: one,
        delayS: delay(),
        deadBand: 0.5 * next(),
        safeguard: undefined,
      }),
  );
  const of: System = { ...system, equipment, sensors: [...system.sensors, ...meters, flow], alarms };
  return { ...site, systems: [of] };
}

test('random', () => {
  let n = 0,
    r = 0;
  for (let seed = FROM; seed < TO; seed++) {
    const next = dice(seed + 31);
    const site = watched(richSite(seed), next);
    const [system] = site.systems;
    if (!system) throw new Error('x');
    const subjects = subjectsOf(site, system);
    const subject = subjects[Math.floor(next() * subjects.length)];
    if (!subject) continue;
    const context = contextOf(site, system, REVIEWED_ON);
    const wrong = upsetOf(context, subject);
    const lives = bothLives(site, {
      wrong: (u) => Object.assign(u, wrong),
      hours: 6,
      hour: Math.floor(24 * next()),
      state: subject.state,
      everyS: 5,
    });
    for (const one of lives) {
      n++;
      if (one.live !== undefined) r++;
      const [a, b] = [one.review ?? Infinity, one.live ?? Infinity];
      if (a === b || Math.abs(a - b) < 21) continue;
      const known = /run-limit.*longer|"frozen"|sensor":"w-/.test(one.key) || b <= 1200;
      if (a > b && known) continue;
      console.log(
        seed,
        subject.fault.id,
        subject.thing.key,
        subject.state,
        one.key,
        'review',
        a,
        'live',
        b,
        a < b ? 'EARLY' : 'late',
      );
    }
  }
  console.log(n, r);
  expect(n).toBeGreaterThan(0);
}, 300_000);
