import type { Facility } from '../../facility/facility';
import { type Day, DAYS } from '../../facility/site';
import { ASPECTS } from '../../rounds/slot';
import type { Shift } from '../../rota/rota';

/** Somebody new: key of a person, or of nobody who is described. */
const SOMEBODY = 'what-if-somebody';
/** min before and after a further round for which somebody is on site to walk it. Common practice, no source. */
const AROUND_MIN = 15;
const DAY_MIN = 1440;

/** Changes of the people of a site that are asked about. Nothing of it is kept. Times are local, "HH:MM"; ways are minutes. */
export interface WhatIf {
  /** One more round a day, by somebody who comes in for it: at this time, on these days. */
  check?: { at: string; days: readonly Day[] };
  /** A shift at other times, or of other people. */
  shift?: { key: string; from: string; to: string; people?: readonly string[] };
  /** Somebody's way to the site, min. */
  way?: { person: string; travelMin: number };
  /** One more person, whom nobody has described yet. */
  more?: { kind: Shift['kind']; days: readonly Day[]; from: string; to: string; travelMin: number };
}

/** Whether nothing is asked about. */
export function isNothing({ check, shift, way, more }: WhatIf): boolean {
  return !(check ?? shift ?? way ?? more);
}

/** A site with changes of its people: the water and everything that acts on it stay as they are. */
export function withChanges(facility: Facility, what: WhatIf): Facility {
  const steps = [withCheck, withShift, withWay, withMore];
  return steps.reduce((site, step) => step(site, what), facility);
}

function withCheck(facility: Facility, { check }: WhatIf): Facility {
  if (!check) return facility;
  const { at, days } = check;
  const key = 'what-if-check';
  const walker = { ...somebody(facility, 0), name: 'whoever walks it' };
  const before = moved(at, -AROUND_MIN);
  return {
    ...facility,
    people: [...facility.people, walker],
    rounds: [...facility.rounds, { key, name: 'The further round', days: [...days], at, sees: [...ASPECTS] }],
    shifts: [
      ...facility.shifts,
      {
        ...{ key, kind: 'on-site', people: [walker.key] },
        ...{ days: before > at ? days.map(dayBefore) : [...days], from: before, to: moved(at, AROUND_MIN) },
      },
    ],
  };
}

function withShift(facility: Facility, { shift }: WhatIf): Facility {
  if (!shift) return facility;
  const { key, from, to, people } = shift;
  const move = (one: Shift): Shift =>
    one.key === key ? { ...one, from, to, ...(people ? { people: [...people] } : {}) } : one;
  return { ...facility, shifts: facility.shifts.map(move) };
}

function withWay(facility: Facility, { way }: WhatIf): Facility {
  if (!way) return facility;
  const travelMin = { value: way.travelMin, origin: 'entered' as const };
  const people = facility.people.map((one) => (one.key === way.person ? { ...one, travelMin } : one));
  return { ...facility, people };
}

function withMore(facility: Facility, { more }: WhatIf): Facility {
  if (!more) return facility;
  const { kind, days, from, to, travelMin } = more;
  const another = somebody(facility, travelMin);
  return {
    ...facility,
    people: [...facility.people, another],
    shifts: [...facility.shifts, { key: 'what-if-more', kind, people: [another.key], days: [...days], from, to }],
  };
}

/** Somebody nobody has described yet, who may do whatever anybody of the site may. */
function somebody({ people, site }: Facility, travelMin: number): Facility['people'][number] {
  const taken = new Set(people.map(({ key }) => key));
  const key = taken.has(SOMEBODY) ? `${SOMEBODY}-${people.length}` : SOMEBODY;
  const competences = (site.competences ?? []).map((one) => ({ competence: one.key }));
  const way = { value: travelMin, origin: 'entered' as const };
  return { key, name: 'one more person', role: 'aquarist', travelMin: way, competences };
}

/** A time of day so many minutes later. */
function moved(time: string, byMin: number): string {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  const at = (hours * 60 + minutes + byMin + DAY_MIN) % DAY_MIN;
  return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`;
}

function dayBefore(day: Day): Day {
  return DAYS[(DAYS.indexOf(day) + 6) % 7] ?? day;
}
