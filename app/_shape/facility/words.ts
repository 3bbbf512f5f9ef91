import { nearestWord } from '#core/facility/nearest-word';
import { z } from 'zod';

const KEY = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const ONE_LINE = /^\S(?:.*\S)?$/;
const LOCAL_TIME = /^(?:[01]\d|2[0-3]):[0-5]\d$/;
/** Zones are named by region and place; a bare offset does not know about summer time. */
const ZONE_NAME = /^[A-Za-z][A-Za-z0-9_+-]*(?:\/[A-Za-z0-9_+-]+)*$/;

/** A key: lower-case letters, digits and hyphens. @param about what the key names */
export function keyText(about: string) {
  return z
    .string()
    .max(64)
    .regex(KEY, { error: 'must be lower-case letters and digits, with single hyphens between them' })
    .describe(about);
}

/** A name as people read it. @param about what is named */
export function nameText(about: string) {
  return z
    .string()
    .max(200)
    .regex(ONE_LINE, { error: 'must be one line of text, without spaces at its ends' })
    .describe(about);
}

/** Free text that is not blank. @param about what it says */
export function freeText(about: string) {
  return z.string().max(2000).regex(/\S/, { error: 'must not be blank' }).describe(about);
}

/** A local wall-clock time. @param about what happens then */
export function localTime(about: string) {
  return z
    .string()
    .regex(LOCAL_TIME, { error: 'must be a time of day as HH:MM, from 00:00 to 23:59' })
    .describe(`${about} Local time, HH:MM.`);
}

/** A day of the calendar that exists. @param about what happens on it */
export function isoDate(about: string) {
  return z.iso
    .date({ error: 'must be a day of the calendar as YYYY-MM-DD' })
    .describe(`${about} ISO date, YYYY-MM-DD.`);
}

/** An IANA time zone. @param about what is in this zone */
export function zoneName(about: string) {
  return z
    .string()
    .regex(ZONE_NAME, { error: 'must be an IANA time zone such as Europe/London', abort: true })
    .refine(isZone, { error: ({ input }) => unknownZone(String(input)) })
    .describe(`${about} IANA time zone, for example Europe/London.`);
}

function unknownZone(name: string): string {
  const near = nearestWord(name, Intl.supportedValuesOf('timeZone'));
  return `must be a known IANA time zone such as Europe/London, {found}${near ? `. Did you mean ${near}?` : ''}`;
}

function isZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
