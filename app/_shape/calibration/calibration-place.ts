import { CALIBRATIONS } from '#core/calibration/found';
import { z } from 'zod';
import { freeText, keyText } from '../facility/words';
import { sitePlace } from '../reviews/case-place';

/** Days of readings that can be looked at. */
const CALIBRATION_DAYS = [7, 14, 30, 60] as const;
/** Stretches that can be left out at once. */
const MOST_OUT = 100;

const days = z.coerce
  .number()
  .pipe(z.union(CALIBRATION_DAYS.map((many) => z.literal(many))))
  .catch(30);
/** Keys in one text, parted by commas, or each by itself as a page's address has them. */
const leftOut = z
  .union([z.string(), z.array(z.string())])
  .optional()
  .transform((given) =>
    [given ?? []]
      .flat()
      .flatMap((keys) => keys.split(','))
      .filter((key) => /^[a-z-]+-\d+$/.test(key)),
  )
  .pipe(z.array(z.string()).max(MOST_OUT));

/** The readings of a system that figures are fitted from: how many days of them, and which stretches are left out. */
export const calibrationPlace = sitePlace.extend({
  system: keyText('Key of the system.'),
  days,
  out: leftOut,
});

const number = z.coerce.number().finite();

/** What is to be taken into the description: seen on the page, worked out anew when it is taken. */
export const calibrationRequest = calibrationPlace.extend({
  is: z.enum(CALIBRATIONS),
  /** ms since 1970: the end of the readings that the person looked at. */
  untilMs: z.coerce.number().int().gte(0),
  value: number,
  low: number,
  high: number,
  why: freeText('Why it is taken over.'),
});
export type CalibrationRequest = z.output<typeof calibrationRequest>;

export const keepCalibrationRequest = calibrationRequest.extend({
  /** Revision of the site whose difference the person looked at. */
  basedOn: z.coerce.number().int().gte(1),
});
