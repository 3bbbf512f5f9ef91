import type { Facility } from '#core/facility/facility';
import type { Equipment } from '#core/facility/system';
import type { Plan } from '#core/plans/plan';
import type { Upset } from '#core/faults/upset';
import { describe, expect, test } from 'vitest';
import { chiller, cutOut, heater, offWithoutReturn, plan, thermostat } from '../../_support/build-equipment';
import { facility, room } from '../../_support/build-facility';
import { alarm, sensor, system, tank } from '../../_support/build-system';
import { bothLives, type Happens } from './both-lives';
import { courseOf, temperature } from './course';
import { sealed } from './plain';

const WATTS = { ratedW: { value: 300, origin: 'entered' }, wattsRange: { minW: 270, maxW: 330 } } as const;
/** 24.5 to 25.5 °C: clearly warm enough from 26 °C on, clearly too cold from 24 °C down. */
const SET = thermostat({ sensors: ['display-temperature'], lowC: 24.5, highC: 25.5 });

function thing(given: Partial<Equipment['plan']> = {}, more: Partial<Equipment> = {}): Equipment {
  const base = heater({ key: 'thing', tank: 'display' });
  return { ...base, ...WATTS, plan: plan({ regulation: SET, ...given }), ...more };
}

type More = Partial<Happens> & { roomC?: number };

/** 100 L with one piece of equipment, its meter and an alarm on it. */
function watched(piece: Equipment, roomC = 15): Facility {
  const probe = sensor({ key: 'display-temperature', tank: 'display' });
  const meter = sensor({ key: 'meter', quantity: 'watts', tank: undefined, equipment: 'thing' });
  const of = system({
    tanks: [tank({ volumeL: 100, surfaceM2: 0.25, siphonBreakMm: undefined, siphonSafeguard: undefined })],
    equipment: [piece],
    sensors: [probe, meter],
    stock: [],
    safeguards: [],
    states: [{ name: 'diving', lastsMin: { value: 30, origin: 'entered' }, endsBy: 'person' }],
    alarms: [
      alarm({ key: 'watts', on: { kind: 'watts', equipment: 'thing' }, delayS: 60, deadBand: 0, safeguard: undefined }),
    ],
  });
  return facility({ rooms: [room({ temperatureC: roomC })], systems: [of] });
}

/** s after which it is raised in the review, and by readings, in a room of 15 °C. */
function lives(piece: Equipment, wrong: (upset: Upset) => void, { roomC, ...more }: More = {}) {
  const [one] = bothLives(watched(piece, roomC), { wrong, hours: 4, ...more });
  return { review: one?.review ?? Infinity, live: one?.live ?? Infinity };
}

/** s by which readings two seconds apart may be late in telling: of the turn, of having settled, of the delay's end. */
const READINGS_S = 6;

const stuck = (upset: Upset) => void upset.health.set('thing', 'stuck-on');
const dead = (upset: Upset) => void upset.health.set('thing', 'dead');
const wrongClock = (upset: Upset) => {
  upset.clockOffS = 1800;
};
const always = { regulation: { kind: 'always', by: 'controller' } } as const;
const hours = { regulation: { kind: 'hours', from: '09:00', to: '10:00', by: 'controller' } } as const;
const notInDiving: Partial<Plan> = { ...always, states: [{ state: 'diving', then: 'off', by: 'person' }] };
const lockable = { interlocks: [offWithoutReturn()] };
const held = { cutOuts: [cutOut({ tank: 'display', above: 40 })] };
const chills = chiller({ key: 'thing', tank: 'display' });
const cools: Equipment = { ...chills, ...WATTS, plan: plan({ regulation: SET }) };

const RAISED: [string, Equipment, (upset: Upset) => void, More?][] = [
  ['a heater that is stuck on', thing(), stuck],
  ['a heater that is stuck on and might have been held off', thing(held), stuck],
  ['a heater that is dead', thing(), dead],
  ['a heater that waits before it starts, and is dead', thing({ regulation: { ...SET, minOffS: 900 } }), dead],
  ['a heater that is set too high', thing(), (upset) => void upset.setPointShift.set('thing', 2)],
  ['a heater without power', thing(), (upset) => void upset.deadCircuits.add('heat')],
  ['a chiller that is stuck on', cools, stuck, { roomC: 35 }],
  ['a chiller that is dead', cools, dead, { roomC: 35 }],
  ['what the clock switches and is stuck on', thing(hours), stuck],
  ['what the clock switches and is stuck on, at its hour', thing(hours), stuck, { hour: 9.5 }],
  ['what the clock switches and is dead', thing(hours), dead],
  ['what a fast clock switches', thing(hours), wrongClock],
  ['what always runs and is dead', thing(always), dead],
  ['what a state should have off', thing(notInDiving), stuck, { state: 'diving' }],
  ['what is dead after a state', thing(notInDiving), dead, { state: 'diving' }],
];

describe('an alarm on watts is raised when readings of the meter would raise it', () => {
  test.each(RAISED)('of %s', (_, piece, wrong, more) => {
    const { review, live } = lives(piece, wrong, more);
    expect(review).toBeLessThanOrEqual(live);
    expect(live).toBeLessThan(review + READINGS_S);
  });

  test('and not where nobody can tell: a dead heater that a cut-out or an interlock may hold off', () => {
    const never = { review: Infinity, live: Infinity };
    expect(lives(thing(held), dead)).toEqual(never);
    expect(lives(thing(lockable), dead)).toEqual(never);
    expect(lives({ ...thing(), wattsRange: undefined }, dead)).toEqual(never);
  });
});

/**
 * Water that loses nothing warms in a straight line: from T0 at P = 300 W with c·V = heat capacity of 0.1 m³, so that the
 * 26 °C at which it is clearly warm enough (half the band above 25.5) are reached after (26 − T0)·c·V/P. Then 60 s until that
 * counts, and the delay of 60 s. By the command alone it would have been after (25.5 − T0)·c·V/P + 60.
 */
test('of a heater that is stuck on in water that loses nothing, to the second', () => {
  const sealedCourse = courseOf(watched(thing()), { hours: 4, fresh: true, fault: stuck, adjust: sealed });
  const { heatCapacity } = sealedCourse.machine.plant;
  const perKelvin = (heatCapacity * 0.1) / 300;
  const byHand = (26 - temperature(sealedCourse, 'display', 0)) * perKelvin + 60 + 60;
  expect(sealedCourse.record.alarms.get('watts')).toBeCloseTo(byHand, 0);
  // Half a kelvin of 0.1 m³ at 300 W is some eleven minutes.
  expect(0.5 * perKelvin).toBeGreaterThan(660);
  expect(0.5 * perKelvin).toBeLessThan(720);
});
