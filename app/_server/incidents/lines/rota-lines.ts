import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { TimelineLine } from '#core/incidents/timeline';
import { turnsOf } from '#core/rota/turns';
import { wallClock } from '#core/time/zone';

/** Who was on, by the rota as it is described today: each turn where it begins, or where the window does. */
export function rotaLines(facility: Facility, fromMs: number, toMs: number): TimelineLine[] {
  const { zone } = facility.site;
  const people = new Map(facility.people.map((person) => [person.key, person]));
  return turnsOf(facility, fromMs, toMs).map(({ person, kind, shift, date, start, end }) => {
    const known = people.get(person);
    const until = wallClock(zone, end);
    const where = kind === 'on-site' ? 'on site' : 'on call';
    return {
      id: `${shift}/${date}/${person}`,
      atMs: Math.max(start, fromMs),
      topic: 'rota',
      what: `By the rota ${where} until ${until.date === date ? '' : `${until.date} `}${until.time}`,
      who: known ? { name: known.name, role: known.role } : null,
      source: 'inferred',
    };
  });
}
