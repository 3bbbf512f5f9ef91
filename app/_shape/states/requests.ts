import { z } from 'zod';
import { OPERATING_STATES, type StateName } from '#core/facility/system';
import { systemPlace } from '../reviews/case-place';

/** Longest that is said ahead, min: 31 days. What is to last longer is put off, and so looked at. Common practice, no source. */
const LONGEST_MIN = 31 * 1440;
const UNIT_MIN = { minutes: 1, hours: 60, days: 1440 } as const;

/** States that can be begun. */
export const beginStates = OPERATING_STATES.filter((name): name is Exclude<StateName, 'normal'> => name !== 'normal');

/** A note as a form sends it; nothing, when it is left empty. */
const note = z
  .string()
  .max(2000)
  .transform((text) => text.replaceAll('\r\n', '\n').replaceAll('\0', '').trim());
const needed = note.refine((text) => text !== '', { error: 'must not be blank' });

/** How long, as a number and its unit. Elapsed time: the clocks may change meanwhile. */
const lasting = {
  lasts: z.coerce
    .number({ error: 'must be a number' })
    .positive({ error: 'must be above 0' })
    .max(LONGEST_MIN, { error: 'must be 31 days at most' }),
  unit: z.enum(['minutes', 'hours', 'days'], { error: 'choose minutes, hours or days' }),
};

/** Minutes that a number and its unit come to; the field that is wrong, when it is too long. */
function inMinutes({ lasts, unit }: { lasts: number; unit: keyof typeof UNIT_MIN }): number {
  return lasts * UNIT_MIN[unit];
}

const isShortEnough = (given: { lasts: number; unit: keyof typeof UNIT_MIN }) => inMinutes(given) <= LONGEST_MIN;
const TOO_LONG = { path: ['lasts'], error: 'must be 31 days at most: after that, look and put it off' };

/** One state of one system, by its address. */
export const stateFormPlace = systemPlace.extend({ state: z.enum(beginStates) });

/** A state is begun. `entry` was drawn when the form was shown: what is sent twice is begun once. */
export const beginRequest = systemPlace
  .extend({ entry: z.uuid(), state: z.enum(beginStates), ...lasting, note: note.optional() })
  .refine(isShortEnough, TOO_LONG)
  .transform(({ lasts, unit, ...rest }) => ({ ...rest, lastsMin: inMinutes({ lasts, unit }) }));

/** The end of a state is put off, with a reason. */
export const putOffRequest = systemPlace
  .extend({ run: z.uuid(), entry: z.uuid(), ...lasting, note: needed })
  .refine(isShortEnough, TOO_LONG)
  .transform(({ lasts, unit, ...rest }) => ({ ...rest, lastsMin: inMinutes({ lasts, unit }) }));

/** Fields of a form that say something of one proof, by how their names begin. */
const SEEN = 'seen:';
const DESPITE = 'despite:';

/** What somebody says of one proof. */
interface SaidOfProof {
  seen: boolean;
  despite: string;
}

/** What is said of proofs, by their keys, out of every other field of a form. */
function saidOfProofs(fields: Readonly<Record<string, unknown>>): Map<string, SaidOfProof> {
  const said = new Map<string, SaidOfProof>();
  const of = (key: string) => said.get(key) ?? { seen: false, despite: '' };
  for (const [name, value] of Object.entries(fields)) {
    if (name.startsWith(SEEN)) said.set(name.slice(SEEN.length), { ...of(name.slice(SEEN.length)), seen: true });
    if (!name.startsWith(DESPITE) || typeof value !== 'string') continue;
    const key = name.slice(DESPITE.length);
    said.set(key, { ...of(key), despite: value.slice(0, 500).trim() });
  }
  return said;
}

/** A state is ended. `note` says what was seen; `seen:KEY` and `despite:KEY` answer for one proof each. */
export const endRequest = systemPlace
  .extend({ run: z.uuid(), entry: z.uuid(), note: note.optional() })
  .loose()
  .transform(({ site, system, run, entry, note, ...rest }) => ({
    ...{ site, system, run, entry, note },
    proofs: saidOfProofs(rest),
  }));

/** Somebody looked at what is watched after a state. */
export const lookRequest = systemPlace.extend({ run: z.uuid(), entry: z.uuid(), note: needed });

/** A lead lets a treatment go on for another day. */
export const authoriseRequest = systemPlace.extend({ run: z.uuid(), entry: z.uuid(), note: note.optional() });

export type BeginRequest = z.output<typeof beginRequest>;
export type PutOffRequest = z.output<typeof putOffRequest>;
export type LookRequest = z.output<typeof lookRequest>;
export type AuthoriseRequest = z.output<typeof authoriseRequest>;
export type EndRequest = z.output<typeof endRequest>;
