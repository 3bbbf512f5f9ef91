import 'server-only';
import { createHash } from 'node:crypto';
import type { Facility } from '#core/facility/facility';
import type { Sensor, System } from '#core/facility/system';
import { isOff, isTested, lastTest } from '#core/plans/credit';
import type { Safeguard } from '#core/plans/safeguard';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { daysBetween } from '#core/time/days';
import { canonicalText } from '#data/canonical';

/**
 * What a review of a system depends on, in one number. Not the day itself but what the day makes of tests, times off and
 * calibrations: on most days a review stays as it is, and on the day a test runs out it does not.
 *
 * @param on   ISO date in the site's zone
 * @returns    SHA-256 in hexadecimal
 */
export function inputHash(facility: Facility, system: System, on: string): string {
  return createHash('sha256')
    .update(canonicalText(inputsOf(facility, system, on)))
    .digest('hex');
}

function inputsOf(facility: Facility, system: System, on: string): unknown {
  const { systems, safeguards, people, rooms, site, sheets: _walked, ...shared } = facility;
  return {
    engine: ENGINE_VERSION,
    ...shared,
    site: { ...site, name: null, openingHours: null, holidays: null, quietHours: null, waysTo: null },
    safeguards: safeguards.map((one) => judged(one, on)),
    people: people.map((person) => ({ ...person, name: null })),
    rooms: rooms.filter(({ key }) => key === system.room),
    // Of the other systems only what hangs on the circuits they share.
    others: systems.filter(({ key }) => key !== system.key).flatMap((other) => sharedLoads(other, system)),
    system: {
      ...system,
      safeguards: system.safeguards.map((one) => judged(one, on)),
      sensors: system.sensors.map((sensor) => ({ ...sensor, due: daysLate(sensor, on) })),
    },
  };
}

function judged(safeguard: Safeguard, on: string): unknown {
  const { tests: _ledger, loud: _heard, off, ...rest } = safeguard;
  const last = lastTest(safeguard, on);
  return {
    ...rest,
    isTested: isTested(safeguard, on),
    off: isOff(safeguard, on) ? off : null,
    last: last && { on: last.on, result: last.result },
  };
}

/** Days since a calibration was due, which a finding says; any day to come is as good as another. */
function daysLate({ calibrationDue }: Sensor, on: string): number | null {
  return calibrationDue === undefined ? null : Math.max(-1, daysBetween(calibrationDue, on));
}

/** What another system hangs on the circuits of this one: a change elsewhere leaves the review as it is. */
function sharedLoads(other: System, { equipment }: System): unknown[] {
  const own = new Set(equipment.map(({ circuit }) => circuit));
  return other.equipment.filter(({ circuit }) => circuit !== undefined && own.has(circuit)).map(loadOf);
}

function loadOf({ type, circuit, ratedW }: System['equipment'][number]): unknown {
  return { type, circuit, ratedW };
}
