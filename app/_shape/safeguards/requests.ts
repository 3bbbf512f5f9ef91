import { z } from 'zod';
import { freeText, isoDate, nameText } from '../facility/words';

/** Stands in an address for the site itself, whose safeguards belong to no system. */
export const SITE_ITSELF = '-';

/** Where a safeguard is found: `system` is the key of a system, or `-` for one of the site. */
const place = { site: z.string(), system: z.string(), safeguard: z.string() };

/** Text as a form sends it: with the line ends of the wire, and perhaps a character that no database takes. */
function written(about: string) {
  return freeText(about).transform((text) => text.replaceAll('\r\n', '\n').replaceAll('\0', '').trim());
}

export const safeguardPlace = z.object(place);

/** A test of a safeguard, as it is recorded on screen. */
export const testRequest = z.object({
  ...place,
  /** Drawn when the form was shown: what is sent twice is kept once. */
  entry: z.uuid(),
  on: isoDate('Day of the test.'),
  result: z.enum(['worked', 'failed'], { error: 'choose whether it worked or failed' }),
  steps: written('What was done.'),
  expected: written('What should have happened.'),
  seen: written('What was seen.'),
  looked: nameText('Who looked.'),
});

/** A test that was entered by mistake is withdrawn, and why. */
export const withdrawRequest = z.object({ ...place, test: z.uuid(), reason: written('Why it is withdrawn.') });

/** A safeguard is taken out of service until a day: an end is compulsory. */
export const offRequest = z
  .object({
    ...place,
    owner: nameText('Whose it is to put it back.'),
    why: written('Why.'),
    since: isoDate('First day it is off.'),
    until: isoDate('Last day it is off.'),
  })
  .refine(({ since, until }) => since <= until, { path: ['until'], error: 'must not be before the first day' });

export type SafeguardPlace = z.output<typeof safeguardPlace>;
export type TestRequest = z.output<typeof testRequest>;
export type WithdrawRequest = z.output<typeof withdrawRequest>;
export type OffRequest = z.output<typeof offRequest>;
