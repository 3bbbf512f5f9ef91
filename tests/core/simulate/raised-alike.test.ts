import type { AlarmDefinition, AlarmSource } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { Equipment } from '#core/facility/system';
import type { Upset } from '#core/faults/upset';
import { describe, expect, test } from 'vitest';
import { heater, plan, returnPump, thermostat } from '../../_support/build-equipment';
import { circuit, facility, monitor, site } from '../../_support/build-facility';
import { alarm, sensor, sump, system, tank } from '../../_support/build-system';
import { bothLives } from './both-lives';

const MIN = 60;
const HOUR = 3600;
const PROBE = 'display-temperature';

/** s between two readings. */
const EVERY_S = 2;
const SILENT = { kind: 'silent', gateway: 'gateway-1' } as const;
const WIDE = plan({ regulation: thermostat({ sensors: [PROBE], lowC: 24.5, highC: 25.5 }) });
const NARROW = plan({ regulation: thermostat({ sensors: [PROBE], lowC: 24.5, highC: 24.6 }) });

type Given = Partial<AlarmDefinition> & { on: AlarmSource };

interface Described {
  heater: Partial<Equipment>;
  more: Equipment[];
  /** Circuit of what Holdfast runs on: one with a battery when left out. */
  hostOn: string;
}

/** A tank of 100 L over a sump, with heater, return and meters on both; the gateway hangs on the bare mains. */
function watched(given: Given, { heater: own = {}, more = [], hostOn = 'host' }: Partial<Described> = {}): Facility {
  const meter = (equipment: string) =>
    sensor({ key: `${equipment}-watts`, quantity: 'watts', tank: undefined, equipment });
  const of = system({
    tanks: [
      tank({ volumeL: 100, surfaceM2: 0.25, siphonBreakMm: undefined, siphonSafeguard: undefined }),
      sump({ volumeL: 40, surfaceM2: 0.1 }),
    ],
    equipment: [
      { ...heater({ ratedW: 200, wattsRange: { minW: 180, maxW: 220 }, plan: WIDE }), ...own },
      ...more,
      returnPump({ flowLPerH: 500, plan: plan() }),
    ],
    sensors: [
      sensor({ key: PROBE, tank: 'display' }),
      sensor(),
      sensor({ key: 'flow', quantity: 'flow', tank: 'display' }),
      meter('heater-1'),
      meter('return-pump'),
    ],
    stock: [],
    safeguards: [],
    states: [],
    alarms: [alarm({ key: 'one', delayS: 10 * MIN, deadBand: 0, safeguard: undefined, ...given })],
  });
  const circuits = [circuit(), circuit({ key: 'heat' }), circuit({ key: 'bare' }), circuit({ key: 'host' })];
  return facility({
    site: { ...site(), watchdog: undefined },
    circuits: circuits.map((one) =>
      one.key === 'host' ? { ...one, backedBy: ['ups'], upsMin: { value: 600, origin: 'entered' } } : one,
    ),
    monitors: [monitor({ circuit: 'bare' }), monitor({ key: 'host', kind: 'host', circuit: hostOn })],
    systems: [of],
  });
}

/** s after which it is raised in the review, and by readings. */
function lives(of: Facility, wrong: (upset: Upset) => void) {
  const [one] = bothLives(of, { wrong, hours: 4, everyS: EVERY_S });
  return { review: one?.review ?? Infinity, live: one?.live ?? Infinity };
}

const dead = (key: string) => (upset: Upset) =>
  void (key === 'gateway-1' ? upset.deadMonitors.add(key) : upset.health.set(key, 'dead'));
const both = (one: (upset: Upset) => void, other: (upset: Upset) => void) => (upset: Upset) => {
  one(upset);
  other(upset);
};
const stuck = (upset: Upset) => void upset.health.set('heater-1', 'stuck-on');
const none = () => undefined;
/** The mains are away for an hour, and come back. */
const cut = (upset: Upset) => {
  upset.utilityDown = true;
  upset.utilityBackS = 3600;
};

const unplugged = (upset: Upset) => void upset.deadCircuits.add('heat');
/** Nobody hears anything of the gateway: it is dead, and where Holdfast runs there is no power for that hour either. */
const unheard = (upset: Upset) => {
  cut(upset);
  upset.deadMonitors.add('gateway-1');
};
/** Two heaters on one thermostat with a narrow band, of which the second is on a circuit of its own. */
const second = heater({ key: 'heater-2', circuit: 'pumps', ratedW: 200, plan: NARROW });
const oftener = { on: { kind: 'run-limit', equipment: 'heater-1', startsPerHour: 1 }, delayS: MIN } as const;

const RAISED: [string, Given, (upset: Upset) => void, Partial<Described>?][] = [
  ['a meter below its limit', { on: { kind: 'sensor', sensor: 'return-pump-watts', below: 20 } }, dead('return-pump')],
  ['a flow that has ceased', { on: { kind: 'sensor', sensor: 'flow', below: 100 } }, dead('return-pump')],
  ['a gateway that is silent, without any delay', { on: SILENT, delayS: 0 }, dead('gateway-1')],
  ['a gateway that is silent in a cut', { on: SILENT }, cut],
  ['a gateway that is silent while nobody listens', { on: SILENT }, unheard, { hostOn: 'bare' }],
  ['a probe that is silent in a cut', { on: { kind: 'silent-sensor', sensor: PROBE } }, cut],
  ['cold that nobody heard of before the mains came back', { on: { kind: 'sensor', sensor: PROBE, below: 24.8 } }, cut],
  [
    'a pump that was found dead then',
    { on: { kind: 'watts', equipment: 'return-pump' } },
    both(cut, dead('return-pump')),
  ],
  ['a fall through a cut', { on: { kind: 'rate', sensor: PROBE, fallsPerHour: 0.2, overMin: 60 } }, cut],
  ['a rise', { on: { kind: 'rate', sensor: PROBE, risesPerHour: 0.4, overMin: 60 } }, stuck],
  [
    'probes that part',
    { on: { kind: 'deviation', sensor: PROBE, other: 'sump-temperature', by: 0.3 } },
    dead('return-pump'),
  ],
  ['probes that part in a cut', { on: { kind: 'deviation', sensor: PROBE, other: 'sump-temperature', by: 0.1 } }, cut],
];

const SWING: Given = { on: { kind: 'sensor', sensor: PROBE, above: 24.57 }, deadBand: 1, delayS: 30 * MIN };
const TOO_LONG: Given = { on: { kind: 'run-limit', equipment: 'return-pump', flow: 'flow', longerThanMin: 90 } };
const blocked = (upset: Upset) => void upset.health.set('return-pump', 'no-effect');

const NEVER: [string, Given, (upset: Upset) => void, Partial<Described>?][] = [
  ['a swing that comes back inside the limit and not by the dead band', SWING, none, { heater: { plan: NARROW } }],
  [
    'a meter far from its limit',
    { on: { kind: 'sensor', sensor: 'return-pump-watts', above: 60 } },
    dead('return-pump'),
  ],
  [
    'a flow that has ceased and should not be too much',
    { on: { kind: 'sensor', sensor: 'flow', above: 9000 } },
    dead('return-pump'),
  ],
  ['a flow that should not go on for so long and has ceased', TOO_LONG, blocked],
  ['starts of what has no power', oftener, unplugged, { heater: { plan: NARROW }, more: [second] }],
];

describe('an alarm is raised in the review when readings of the same course raise it', () => {
  test.each(RAISED)('%s', (_, given, wrong, described) => {
    const { review, live } = lives(watched(given, described), wrong);
    // Two readings pass until a turn is seen and its delay is over; the last one before the onset was a word as well.
    expect(live - review).toBeGreaterThanOrEqual(-EVERY_S);
    expect(live - review).toBeLessThanOrEqual(4 * EVERY_S);
  });

  test('and not before: more starts an hour, of which those before the onset are not counted', () => {
    const { review, live } = lives(watched(oftener, { heater: { plan: NARROW } }), none);
    expect(live).toBeLessThan(review);
    expect(review).toBeLessThan(live + 2 * HOUR);
  });

  test.each(NEVER)('and never: %s', (_, given, wrong, described) => {
    expect(lives(watched(given, described), wrong)).toEqual({ review: Infinity, live: Infinity });
  });
});
