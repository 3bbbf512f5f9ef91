import 'server-only';
import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import type { Facility } from '#core/facility/facility';
import type { Turn } from '#core/rota/turns';
import { wallClock } from '#core/time/zone';

/** What a calendar is written from. */
interface Given {
  site: { id: string; name: string; zone: string; revision: number };
  facility: Pick<Facility, 'people'>;
  turns: readonly Turn[];
  /** Key of the person whose shifts alone are told; undefined for everybody's, null for nobody's. */
  mine: string | null | undefined;
  at: Date;
}

/** How often a calendar may ask anew, s. */
const REFRESH_S = 3600;
/**
 * Shifts as a calendar of RFC 5545: one event for each turn, with an identity that stays and its true beginning and end in
 * UTC, so that no calendar has to know the zone. What a shift is called says the time on the wall.
 */
export function writeCalendar({ site, facility, turns, mine, at }: Given): string {
  const names = new Map(facility.people.map(({ key, name }) => [key, name]));
  const calendar = ical({
    name: plain(mine === undefined ? `Rota, ${site.name}` : `My shifts, ${site.name}`),
    prodId: { company: 'Holdfast', product: 'Rota', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: REFRESH_S,
    x: [{ key: 'X-WR-TIMEZONE', value: site.zone }],
  });
  for (const together of byTurn(turns, mine)) {
    const [{ shift, date, kind, start, end }] = together;
    const who = together.map(({ person }) => names.get(person) ?? person).join(', ');
    calendar.createEvent({
      id: `${date}.${shift}.${site.id}@holdfast`,
      sequence: Math.max(0, site.revision - 1),
      stamp: at,
      start: new Date(start),
      end: new Date(end),
      summary: plain(`${kind === 'on-site' ? 'On site' : 'On call'}${mine === undefined ? `: ${who}` : ''}`),
      description: plain(`${who}, ${onTheWall(site.zone, start)} to ${onTheWall(site.zone, end)} ${site.zone}.`),
      location: plain(site.name),
      transparency: kind === 'on-site' ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
    });
  }
  return calendar.toString();
}

/** Without the control characters that no calendar may hold; tab and line end are written otherwise (RFC 5545, 3.1). */
function plain(text: string): string {
  const mayStay = (letter: string) => (letter >= ' ' ? letter !== '\u007f' : letter === '\t' || letter === '\n');
  return [...text].map((letter) => (mayStay(letter) ? letter : ' ')).join('');
}

/** Those who are in the same turn of a shift, together; of one person, their turns alone. */
function byTurn(turns: readonly Turn[], mine: string | null | undefined): [Turn, ...Turn[]][] {
  const all = new Map<string, [Turn, ...Turn[]]>();
  for (const turn of turns) {
    if (mine !== undefined && turn.person !== mine) continue;
    const name = `${turn.date} ${turn.shift}`;
    const others = all.get(name);
    if (others) others.push(turn);
    else all.set(name, [turn]);
  }
  return [...all.values()];
}

function onTheWall(zone: string, at: number): string {
  return wallClock(zone, at).time;
}
