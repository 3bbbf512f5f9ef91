import { firstDayOf } from '#core/rounds/first-day';
import { z } from 'zod';
import { roundSheetShape } from '../facility/round-sheet';
import { addressKey, freeText } from '../facility/words';

const site = z.string();
const sheet = addressKey('Key of the sheet.');

export const sheetAddress = z.object({ site, sheet });

/** The starting sheets of a system; of what belongs to the whole site, where none is named. */
export const startSheetsRequest = z.object({ site, system: z.string().optional() });

const dated = z.looseObject({ schedule: z.looseObject({ rule: z.string().max(200), from: z.iso.date() }) });

/** A sheet whose first day is moved on to the first one of its rule, for a person names a day and means "from then on". */
function begun(given: unknown): unknown {
  const read = dated.safeParse(given);
  if (!read.success) return given;
  const { schedule } = read.data;
  return { ...read.data, schedule: { ...schedule, from: firstDayOf(schedule.rule, schedule.from) ?? schedule.from } };
}

/** A sheet as an editor sends it: in one field, in the form of the facility file. */
export const writeSheetRequest = z.object({
  site,
  body: z
    .string()
    .max(400_000)
    .transform((text, context) => {
      try {
        return begun(JSON.parse(text));
      } catch {
        context.addIssue({ code: 'custom', message: 'must be a sheet' });
        return z.NEVER;
      }
    })
    .pipe(roundSheetShape),
  /** Version that the draft began from; left out for a sheet that was never in force. */
  basedOn: z.coerce.number().int().gte(1).optional(),
  /** Put into force at once. */
  put: z.literal('yes').optional(),
  why: freeText('Why it is changed.').optional(),
});

/** Drafts that are to come into force: their keys, parted by commas. */
export const putSheetsRequest = z.object({
  site,
  sheets: z
    .string()
    .max(200_000)
    .transform((keys) => keys.split(','))
    .pipe(z.array(sheet).min(1)),
  why: freeText('Why they come into force.').optional(),
});

export const retireSheetRequest = sheetAddress.extend({ why: freeText('Why it is no longer walked.') });

export type SheetAddress = z.output<typeof sheetAddress>;
export type StartSheetsRequest = z.output<typeof startSheetsRequest>;
export type WriteSheetRequest = z.output<typeof writeSheetRequest>;
export type PutSheetsRequest = z.output<typeof putSheetsRequest>;
export type RetireSheetRequest = z.output<typeof retireSheetRequest>;
