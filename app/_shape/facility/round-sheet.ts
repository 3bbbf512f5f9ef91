import { type RoundSheet, SIGNERS } from '#core/rounds/round-sheet';
import { readSchedule, type Schedule } from '#core/rounds/schedule';
import { z } from 'zod';
import { amount } from './amount';
import { fieldsOnly, noun } from './noun';
import { addressKey, isoDate, keyOf, localTime, nameText } from './words';

const MOST_LINES = 500;
const MOST_OPTIONS = 12;
const MOST_TIMES = 12;
const MOST_DAYS = 400;
const YEAR_MIN = 366 * 24 * 60;

const lineKey = z
  .string()
  .max(200)
  .regex(/^[a-z0-9/-]+$/, { error: 'must be lower-case letters and digits, with hyphens and strokes between them' })
  .describe('Key of the line; of one that follows from the description, the key it has there.');
const range = fieldsOnly({
  from: z.number().optional().describe('From; left out: as low as it gets.'),
  to: z.number().optional().describe('To; left out: as high as it gets.'),
})
  .refine(({ from, to }) => from === undefined || to === undefined || from <= to, {
    error: 'must not end before it begins',
  })
  .describe('What is usual, both ends counting.');
const second = z.literal(true).optional().describe('Somebody else signs it as well.');
const own = {
  key: lineKey,
  what: nameText('What is looked at.'),
  why: nameText('Why it matters.').optional(),
  system: keyOf(
    'system',
    'Key of the system it is looked at in; left out: with what belongs to the whole site.',
  ).optional(),
  tank: keyOf('tank', 'Key of the tank it is looked at.').optional(),
  secondSignature: second,
};
const option = fieldsOnly({
  key: lineKey,
  name: nameText('The word to choose.'),
  usual: z.boolean().describe('Whether nothing follows from it.'),
});

const lineShape = z.discriminatedUnion('kind', [
  noun('describedLine', 'A line that follows from the description.', {
    kind: z.literal('described').describe('described: a line that follows from the description.'),
    key: lineKey,
    what: nameText('What is looked at, in other words.').optional(),
    usual: range.optional(),
    secondSignature: second,
  }),
  noun('figureLine', 'A number in a unit of its own.', {
    ...own,
    kind: z.literal('figure').describe('figure: a number in a unit of its own.'),
    unit: nameText('Unit, as it is written beside the number.'),
    usual: range.optional(),
  }),
  noun('choiceLine', 'One of a few words.', {
    ...own,
    kind: z.literal('choice').describe('choice: one of a few words.'),
    options: z.array(option).min(2).max(MOST_OPTIONS).describe('The words to choose from.'),
  }),
  noun('dosesLine', 'Doses given since somebody last looked.', {
    ...own,
    kind: z.literal('doses').describe('doses: doses given since somebody last looked.'),
    dose: nameText('What one dose is.').optional(),
    usual: range.optional(),
  }),
  noun('plainLine', 'Something that is as usual or is not, a sentence, or photos.', {
    ...own,
    kind: z
      .enum(['yes-no', 'text', 'photo'])
      .describe('yes-no: as usual or not; text: a sentence; photo: one photo or a few.'),
  }),
]);

const timeShape = fieldsOnly({
  at: localTime('Due.'),
  anchor: z
    .enum(['opening', 'closing'])
    .optional()
    .describe('Counted from when the site opens or closes, where it does.'),
  afterMin: amount('Min', 'So long after the anchor, below 0 for before it', { least: -1440, most: 1440 })
    .refine(Number.isInteger, { error: 'must be a whole number of minutes' })
    .optional(),
});

/** A schedule as the facility file writes it. */
export const scheduleShape = noun('schedule', 'When a sheet is due, on the clocks of the site.', {
  rule: z.string().max(200).describe('Rule of RFC 5545 for its days, without its name: "FREQ=WEEKLY;BYDAY=MO,TH".'),
  from: isoDate('First day of the rule.'),
  until: isoDate('Last day; left out for ever.').optional(),
  times: z.array(timeShape).min(1).max(MOST_TIMES).describe('Times of the day.'),
  except: z.array(isoDate('A day.')).max(MOST_DAYS).optional().describe('Days of the rule that are left out.'),
  notOnHolidays: z.literal(true).optional().describe('The holidays of the site are left out.'),
}).superRefine((schedule, context) => {
  const read = readSchedule(schedule as Schedule);
  if (!read.ok) for (const message of read.reason) context.addIssue({ code: 'custom', path: ['rule'], message });
});

/** A kept round sheet as the facility file writes it. */
export const roundSheetShape = noun('roundSheet', 'A sheet that is walked by a schedule of its own.', {
  key: addressKey('Key of the sheet.'),
  name: nameText('Name of the sheet.'),
  schedule: scheduleShape.describe('When it is due.'),
  graceMin: amount('Min', 'From being due to being late; left out: by how often it comes round', {
    least: 0,
    most: YEAR_MIN,
  })
    .refine(Number.isInteger, { error: 'must be a whole number of minutes' })
    .optional(),
  signedBy: z.enum(SIGNERS).optional().describe('Least role of who may sign; left out: whoever may walk it.'),
  secondSignature: second,
  lines: z
    .array(lineShape)
    .min(1)
    .max(MOST_LINES)
    .refine((lines) => new Set(lines.map(({ key }) => key)).size === lines.length, {
      error: 'must not hold the same line twice',
    })
    .describe('Its lines, in order.'),
}) satisfies z.ZodType<RoundSheet>;
