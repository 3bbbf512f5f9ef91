import { nearestWord } from '#core/facility/nearest-word';
import { z } from 'zod';
import { hinted, type Referred } from '../form/hints';

const KEY = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
/** A page under this word begins what is not there yet. */
const NOT_NEW = /^(?!new$)/;
const NEW_IS_TAKEN = 'must be another word: "new" stands in addresses for what is to come';
const ONE_LINE = /^\S(?:.*\S)?$/;
const LOCAL_TIME = /^(?:[01]\d|2[0-3]):[0-5]\d$/;
/** Zones are named by region and place; a bare offset does not know about summer time. */
const ZONE_NAME = /^[A-Za-z][A-Za-z0-9_+-]*(?:\/[A-Za-z0-9_+-]+)*$/;

/** A key: lower-case letters, digits and hyphens. @param about what the key names */
export function keyText(about: string) {
  return hinted(bareKey(about), { as: 'key' });
}

/**
 * A key that stands in the address of a page of its own.
 *
 * @param about   what the key names
 */
export function addressKey(about: string) {
  return hinted(bareKey(about).regex(NOT_NEW, { error: NEW_IS_TAKEN }), { as: 'key' });
}

/**
 * The key of a member of another list.
 *
 * @param to      which list
 * @param about   what the key names
 * @param more    `of`: only members of this kind or quantity will do; `or`: words that stand for something else
 */
export function keyOf(to: Referred, about: string, more: { of?: string; or?: readonly string[] } = {}) {
  return hinted(bareKey(about), { as: 'reference', to, ...more });
}

/**
 * The key of a sensor, or of a series that is worked out of others.
 *
 * @param derived   what the key of such a series begins with
 * @param about     what the key names
 */
export function seriesKey(derived: string, about: string) {
  const shape = z
    .string()
    .max(200)
    .regex(new RegExp(`^(?:${derived}[a-z0-9:.-]+|[a-z0-9]+(?:-[a-z0-9]+)*)$`), {
      error: `must be lower-case letters and digits, with single hyphens between them, or begin with ${derived}`,
    })
    .describe(about);
  return hinted(shape, { as: 'reference', to: 'sensor' });
}

function bareKey(about: string) {
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
  return hinted(z.string().max(2000).regex(/\S/, { error: 'must not be blank' }).describe(about), { as: 'long-text' });
}

/** A local wall-clock time. @param about what happens then */
export function localTime(about: string) {
  const shape = z
    .string()
    .regex(LOCAL_TIME, { error: 'must be a time of day as HH:MM, from 00:00 to 23:59' })
    .describe(`${about} Local time, HH:MM.`);
  return hinted(shape, { as: 'time' });
}

/** A day of the calendar that exists. @param about what happens on it */
export function isoDate(about: string) {
  const shape = z.iso
    .date({ error: 'must be a day of the calendar as YYYY-MM-DD' })
    .describe(`${about} ISO date, YYYY-MM-DD.`);
  return hinted(shape, { as: 'date' });
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
