import { z } from 'zod';
import { BY_HAND } from './kept-definition';
import { alarmPlace } from './requests';

/** Text of a form, with the line ends of the wire. @param most characters */
function text(most: number) {
  return z
    .string()
    .max(most, { error: `must be ${most} characters at most` })
    .transform((given) => given.replaceAll('\r\n', '\n').replaceAll('\0', '').trim());
}

/** What may be left empty; nothing then. */
function perhaps(most: number) {
  return text(most)
    .transform((given) => (given === '' ? undefined : given))
    .optional();
}

/** Somebody saw what no sensor reads, and calls for help. */
export const callForHelpRequest = z.object({
  site: z.string(),
  /** Made by whoever calls: what is sent twice is called once. */
  call: z.uuid(),
  /** Key of the system. */
  system: z.string().min(1, { error: 'choose a system' }).max(200),
  /** In a few words: it is the name of the alarm. */
  what: text(BY_HAND.name)
    .transform((given) => given.replace(/\s+/g, ' '))
    .refine((given) => given !== '', { error: 'must not be blank: whoever is called has to know what for' }),
  saw: perhaps(BY_HAND.saw),
  where: perhaps(BY_HAND.where),
  /** The round it is called from. */
  round: z.uuid().optional(),
});

export type CallForHelp = z.output<typeof callForHelpRequest>;

/** Somebody says that what was called by hand is right again, and what was done. */
export const rightAgainRequest = alarmPlace.extend({
  note: text(BY_HAND.saw).refine((given) => given !== '', { error: 'must not be blank: say what was done' }),
});
