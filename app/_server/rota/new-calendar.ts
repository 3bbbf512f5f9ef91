import 'server-only';
import ical, { type ICalCalendar, ICalCalendarMethod } from 'ical-generator';

/** How often a calendar may ask anew, s. */
const REFRESH_S = 3600;

/** An empty calendar of a site. @param name   what it is called in whatever shows it */
export function newCalendar(name: string, zone: string): ICalCalendar {
  return ical({
    name: plain(name),
    prodId: { company: 'Holdfast', product: 'Rota', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: REFRESH_S,
    x: [{ key: 'X-WR-TIMEZONE', value: zone }],
  });
}

/** Without the control characters that no calendar may hold; tab and line end are written otherwise (RFC 5545, 3.1). */
export function plain(text: string): string {
  const mayStay = (letter: string) => (letter >= ' ' ? letter !== '\u007f' : letter === '\t' || letter === '\n');
  return [...text].map((letter) => (mayStay(letter) ? letter : ' ')).join('');
}
