import type { Safeguard } from '../plans/safeguard';
import { addDays } from '../time/add-days';
import type { Person, Shift } from '../rota/rota';
import type { Facility } from './facility';
import type { Sensor, System } from './system';

/**
 * The same facility with every date in it moved by the same number of days: tests of safeguards, the days between which a
 * safeguard is off, the days until which calibrations and competences count, and those between which shifts begin. So a description written for one day tells the same
 * story on another. The first day of the rule of a sheet stays, for its weekday is meant.
 *
 * @param facility left as it is
 * @param days     whole days, below 0 for earlier
 * @returns a facility that judged `days` later is judged like the given one
 * @throws RangeError when a date would lie outside the years 0000 to 9999
 */
export function shiftDates(facility: Facility, days: number): Facility {
  const moved = (date: string) => addDays(date, days);
  return {
    ...facility,
    people: facility.people.map((person) => shiftCompetences(person, moved)),
    shifts: facility.shifts.map((shift) => shiftShift(shift, moved)),
    safeguards: facility.safeguards.map((safeguard) => shiftLedger(safeguard, moved)),
    systems: facility.systems.map((system) => shiftSystem(system, moved)),
  };
}

function shiftCompetences(person: Person, moved: (date: string) => string): Person {
  if (person.competences === undefined) return person;
  const competences = person.competences.map((one) =>
    one.until === undefined ? one : { ...one, until: moved(one.until) },
  );
  return { ...person, competences };
}

/** Where a shift does not come every week, another week may be its own, and a rule may name other days of the month. */
function shiftShift(shift: Shift, moved: (date: string) => string): Shift {
  const { starts, ends, except } = shift;
  return {
    ...shift,
    ...(starts === undefined ? {} : { starts: moved(starts) }),
    ...(ends === undefined ? {} : { ends: moved(ends) }),
    ...(except === undefined ? {} : { except: except.map((day) => ({ ...day, on: moved(day.on) })) }),
  };
}

function shiftSystem(system: System, moved: (date: string) => string): System {
  return {
    ...system,
    sensors: system.sensors.map((sensor) => shiftCalibration(sensor, moved)),
    safeguards: system.safeguards.map((safeguard) => shiftLedger(safeguard, moved)),
  };
}

function shiftLedger(safeguard: Safeguard, moved: (date: string) => string): Safeguard {
  const { off } = safeguard;
  return {
    ...safeguard,
    tests: safeguard.tests.map((test) => ({ ...test, on: moved(test.on) })),
    ...(off ? { off: { ...off, since: moved(off.since), until: moved(off.until) } } : {}),
  };
}

function shiftCalibration(sensor: Sensor, moved: (date: string) => string): Sensor {
  const { calibrationDue } = sensor;
  return calibrationDue === undefined ? sensor : { ...sensor, calibrationDue: moved(calibrationDue) };
}
