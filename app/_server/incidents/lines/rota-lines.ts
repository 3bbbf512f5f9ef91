import 'server-only';
import type { TimelineLine } from '#core/incidents/timeline';
import { type Rota, turnsOf } from '#core/rota/turns';
import { wallClock } from '#core/time/zone';

/** Who was on, by the rota as it is described today, after swaps and leave: each turn where it begins, or where the window does. */
export function rotaLines(rota: Rota, fromMs: number, toMs: number): TimelineLine[] {
  const { zone } = rota.site;
  const people = new Map(rota.people.map((person) => [person.key, person]));
  return turnsOf(rota, fromMs, toMs).map(({ person, kind, shift, date, start, end }) => {
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
