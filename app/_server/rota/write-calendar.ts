import 'server-only';
import { type ICalCalendar, ICalEventTransparency } from 'ical-generator';
import type { Facility } from '#core/facility/facility';
import type { DutyException } from '#core/rota/rota';
import type { Turn } from '#core/rota/turns';
import { wallClock } from '#core/time/zone';
import { newCalendar, plain } from './new-calendar';

/** What a calendar is written from. */
interface Given {
  site: { id: string; name: string; zone: string };
  facility: Pick<Facility, 'people'>;
  turns: readonly Turn[];
  /** Swaps and leave, of which leave is told. */
  exceptions: readonly DutyException[];
  /** Key of the person whose shifts alone are told; undefined for everybody's, null for nobody's. */
  mine: string | null | undefined;
  /** Number that grows with each change of the description and each decision about leave and swaps. */
  sequence: number;
  at: Date;
}

/**
 * Shifts as a calendar of RFC 5545: one event for each turn, after leave and swaps, with an identity that stays and its true
 * beginning and end in UTC, so that no calendar has to know the zone. What a shift is called says the time on the wall.
 */
export function writeCalendar(given: Given): string {
  const { site, mine, turns } = given;
  const calendar = newCalendar(mine === undefined ? `Rota, ${site.name}` : `My shifts, ${site.name}`, site.zone);
  const parts = new Map<string, number>();
  for (const together of byTurn(turns, mine)) {
    const [{ shift, date }] = together;
    // What leave has cut in two is told in parts, of which the first keeps the name of the whole.
    const part = (parts.get(`${date} ${shift}`) ?? 0) + 1;
    parts.set(`${date} ${shift}`, part);
    addTurn(calendar, given, together, `${date}.${shift}${part > 1 ? `.${part}` : ''}`);
  }
  addLeave(calendar, given);
  return calendar.toString();
}

function addTurn(
  calendar: ICalCalendar,
  { site, facility, mine, sequence, at }: Given,
  together: [Turn, ...Turn[]],
  id: string,
): void {
  const [{ kind, start, end }] = together;
  const names = new Map(facility.people.map(({ key, name }) => [key, name]));
  const nameOf = (key: string) => names.get(key) ?? key;
  const who = together
    .map(({ person, insteadOf }) => `${nameOf(person)}${insteadOf === undefined ? '' : ` for ${nameOf(insteadOf)}`}`)
    .join(', ');
  calendar.createEvent({
    id: `${id}.${site.id}@holdfast`,
    sequence,
    stamp: at,
    start: new Date(start),
    end: new Date(end),
    summary: plain(`${kind === 'on-site' ? 'On site' : 'On call'}${mine === undefined ? `: ${who}` : ''}`),
    description: plain(`${who}, ${onTheWall(site.zone, start)} to ${onTheWall(site.zone, end)} ${site.zone}.`),
    location: plain(site.name),
    transparency: kind === 'on-site' ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
  });
}

/** Leave, by its length and without its reason. */
function addLeave(calendar: ICalCalendar, { site, facility, exceptions, mine, sequence, at }: Given): void {
  const names = new Map(facility.people.map(({ key, name }) => [key, name]));
  for (const one of exceptions) {
    if (one.kind !== 'leave' || (mine !== undefined && one.person !== mine)) continue;
    const name = names.get(one.person);
    if (name === undefined) continue;
    calendar.createEvent({
      id: `leave.${one.person}.${one.from}.${site.id}@holdfast`,
      sequence,
      stamp: at,
      start: new Date(one.from),
      end: new Date(one.to),
      summary: plain(mine === undefined ? `On leave: ${name}` : 'On leave'),
      location: plain(site.name),
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
}

/** Those who are in the same turn of a shift for the same time, together; of one person, their turns alone. */
function byTurn(turns: readonly Turn[], mine: string | null | undefined): [Turn, ...Turn[]][] {
  const all = new Map<string, [Turn, ...Turn[]]>();
  for (const turn of turns) {
    if (mine !== undefined && turn.person !== mine) continue;
    const name = `${turn.date} ${turn.shift} ${turn.start} ${turn.end}`;
    const others = all.get(name);
    if (others) others.push(turn);
    else all.set(name, [turn]);
  }
  return [...all.values()];
}

function onTheWall(zone: string, at: number): string {
  return wallClock(zone, at).time;
}
