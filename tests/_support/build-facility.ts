import { FACILITY_FORMAT, type Facility } from '#core/facility/facility';
import { type Circuit, DAYS, type Monitor, type Room, type Site } from '#core/facility/site';
import type { Person, Shift } from '#core/rota/rota';
import type { RoundSlot } from '#core/rounds/slot';
import { safeguard, system } from './build-system';
import { entered, fill, type Given } from './given';

/** `harbour`, in Europe/London, with a watch outside the site. */
export function site(given: Given<Site> = {}): Site {
  const base: Site = {
    key: 'harbour',
    name: 'Harbour Aquarium',
    zone: 'Europe/London',
    altitudeM: entered(5),
    answerOnSiteMin: entered(10),
    answerOnCallMin: entered(20),
    powerCut: { means: 'Portable generator kept in the yard', repairMin: entered(30) },
    watchdog: { afterMin: 15, answeredBy: 'rota', safeguard: 'outside-watch' },
  };
  return fill(base, given);
}

/** `gallery`: 21 °C and 55 % all day. */
export function room(given: Given<Room> = {}): Room {
  const base: Room = { key: 'gallery', name: 'Gallery', temperatureC: entered(21), humidityPct: entered(55) };
  return fill(base, given);
}

/** `pumps`: 16 A at 230 V, alone on its RCD group. */
export function circuit(given: Given<Circuit> = {}): Circuit {
  const base: Circuit = {
    key: 'pumps',
    name: 'Pumps',
    breakerA: entered(16),
    volts: entered(230),
    rcd: 'rcd-1',
    backedBy: [],
  };
  return fill(base, given);
}

/** `gateway-1`, on the circuit with the battery. */
export function monitor(given: Given<Monitor> = {}): Monitor {
  return fill<Monitor>({ key: 'gateway-1', name: 'Gateway 1', kind: 'gateway', circuit: 'watch' }, given);
}

/** `robin`: an aquarist 25 minutes away. */
export function person(given: Given<Person> = {}): Person {
  return fill<Person>({ key: 'robin', name: 'Robin', role: 'aquarist', travelMin: entered(25) }, given);
}

/** `day`: Robin on site every day, 08:00 to 18:00. */
export function shift(given: Given<Shift> = {}): Shift {
  const base: Shift = { key: 'day', kind: 'on-site', people: ['robin'], days: [...DAYS], from: '08:00', to: '18:00' };
  return fill(base, given);
}

/** `morning`: every day at 08:30, everything is looked at. */
export function round(given: Given<RoundSlot> = {}): RoundSlot {
  const base: RoundSlot = {
    key: 'morning',
    name: 'Morning round',
    days: [...DAYS],
    at: '08:30',
    sees: ['equipment', 'temperature', 'level', 'salinity', 'oxygen', 'animals', 'floor'],
  };
  return fill(base, given);
}

/** A whole valid site with one system (`system()`), somebody on duty or on call at every hour, two rounds a day. */
export function facility(given: Given<Facility> = {}): Facility {
  const base: Facility = {
    format: FACILITY_FORMAT,
    site: site(),
    rooms: [room()],
    circuits: [
      circuit(),
      circuit({ key: 'heat', name: 'Heat', rcd: 'rcd-2' }),
      circuit({ key: 'air', name: 'Air', rcd: 'rcd-3', backedBy: ['ups'], upsMin: 240, upsSafeguard: 'battery' }),
      circuit({ key: 'watch', name: 'Watch', rcd: 'rcd-4', backedBy: ['ups'], upsMin: 120, upsSafeguard: 'battery' }),
    ],
    monitors: [
      monitor(),
      monitor({ key: 'host', name: 'Holdfast host', kind: 'host' }),
      monitor({ key: 'router', name: 'Router', kind: 'router' }),
    ],
    safeguards: [
      safeguard({ key: 'battery', name: 'Batteries', kind: 'standby-power' }),
      safeguard({ key: 'outside-watch', name: 'Watch outside the site', kind: 'alarm' }),
    ],
    people: [person(), person({ key: 'sam', name: 'Sam', role: 'lead', travelMin: 40 })],
    shifts: [shift(), shift({ key: 'night', kind: 'on-call', people: ['sam'], from: '18:00', to: '08:00' })],
    rounds: [round(), round({ key: 'evening', name: 'Evening round', at: '17:00' })],
    profiles: [],
    systems: [system()],
  };
  return fill(base, given);
}
