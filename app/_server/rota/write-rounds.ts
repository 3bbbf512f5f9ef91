import 'server-only';
import { ICalEventTransparency } from 'ical-generator';
import type { WalkDue } from '#core/rounds/due';
import { wallClock } from '#core/time/zone';
import { newCalendar, plain } from './new-calendar';

/**
 * When rounds are due as a calendar of RFC 5545: one event for each, without a length, since a round takes as long as it takes.
 *
 * @param sequence   number that grows with each change of the description
 */
export function writeRounds(
  site: { id: string; name: string; zone: string },
  walks: readonly WalkDue[],
  sequence: number,
  at: Date,
): string {
  const calendar = newCalendar(`Rounds, ${site.name}`, site.zone);
  for (const { slot, date, dueAt, lateAt } of walks) {
    const late = wallClock(site.zone, lateAt);
    calendar.createEvent({
      id: `${date}.${slot.key}.rounds.${site.id}@holdfast`,
      sequence,
      stamp: at,
      start: new Date(dueAt),
      summary: plain(slot.name),
      description: plain(
        `Due at ${wallClock(site.zone, dueAt).time} ${site.zone}, late from ${late.date === date ? '' : `${late.date} `}${late.time}.`,
      ),
      location: plain(site.name),
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  return calendar.toString();
}
