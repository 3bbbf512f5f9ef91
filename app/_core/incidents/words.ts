import type {
  Bodies,
  CauseKind,
  Deed,
  Entry,
  EntryKind,
  MarkName,
  Part,
  Signer,
  Source,
  StepName,
  Strength,
} from './incident';
import type { Interval } from './intervals';
import type { IncidentState } from './state';
import words from './words.json';

/** What everything in an incident is called. */
export const KIND_WORDS: Readonly<Record<EntryKind, string>> = words.kinds;
export const STEP_WORDS: Readonly<Record<StepName, string>> = words.steps;
export const SOURCE_WORDS: Readonly<Record<Source, string>> = words.sources;
export const MARK_WORDS: Readonly<Record<MarkName, string>> = words.marks;
export const INTERVAL_WORDS: Readonly<Record<Interval['name'], string>> = words.intervals;
export const DEED_WORDS: Readonly<Record<Deed, string>> = words.deeds;
export const CAUSE_WORDS: Readonly<Record<CauseKind, string>> = words.causes;
export const STRENGTH_WORDS: Readonly<Record<Strength, string>> = words.strengths;
export const PART_WORDS: Readonly<Record<Part, string>> = words.parts;
export const STATE_WORDS: Readonly<Record<IncidentState, string>> = words.states;
export const SIGNER_WORDS: Readonly<Record<Signer, string>> = words.signers;

/** What ids in an entry stand for: safeguards by id, actions by the id of their entry. */
export type Called = ReadonlyMap<string, string>;

/**
 * What an entry says, in a sentence or two. The figures of a meter are left to whoever shows them, in the person's units.
 *
 * @param called   what the ids in it stand for
 */
export function entrySaid(entry: Entry, called: Called): string {
  if (entry.body === null) return `Taken back: ${entry.reason ?? ''}`;
  switch (entry.kind) {
    case 'step':
      return stepSaid(entry.body);
    case 'sample':
      return sampleSaid(entry.body);
    case 'measurement':
      return `${notDone('Meter reading', entry.body)}${at(entry.body.where)}${and(entry.body.note)}`;
    case 'log':
      return entry.body.text;
    case 'mark':
      return `${MARK_WORDS[entry.body.mark]}${and(entry.body.note)}`;
    case 'loss':
      return lossSaid(entry.body);
    case 'safeguard':
      return `${called.get(entry.body.safeguard) ?? 'A safeguard'}: ${DEED_WORDS[entry.body.did]}. ${entry.body.evidence}`;
    case 'cause':
      return `Cause (${CAUSE_WORDS[entry.body.cause]}, ${entry.body.certainty}): ${entry.body.text}`;
    case 'action':
      return `Action, ${entry.body.owner} by ${entry.body.due} (${STRENGTH_WORDS[entry.body.strength]}): ${entry.body.text}`;
    case 'action-done':
      return `Done: ${called.get(entry.body.action) ?? 'an action'}. ${entry.body.proof}`;
    case 'summary':
      return `${PART_WORDS[entry.body.part]}: ${entry.body.text}`;
    case 'signature':
      return `Signed as ${SIGNER_WORDS[entry.body.as]}, over ${entry.body.covers.length} entries${and(entry.body.why)}`;
  }
}

function stepSaid(body: Bodies['step']): string {
  return `${notDone(STEP_WORDS[body.step], body)}${and(body.note)}`;
}

function sampleSaid(body: Bodies['sample']): string {
  const bottles = body.bottles.length > 0 ? ` (${body.bottles.join(' and ')})` : '';
  return `${notDone(`Water sample${bottles}`, body)}${at(body.where)}${and(body.note)}`;
}

function lossSaid({ group, dead, putDown, affected, missing, waterL, note }: Bodies['loss']): string {
  const counts = [
    [dead, 'dead'],
    [putDown, 'put down'],
    [missing, 'missing'],
    [affected, 'affected'],
  ] as const;
  const said = counts.flatMap(([count, word]) => (count > 0 ? [`${count} ${word}`] : []));
  const water = waterL > 0 ? ['water lost'] : [];
  return `${group}: ${[...said, ...water].join(', ')}${and(note)}`;
}

function notDone(what: string, { notDone: why }: { notDone?: string }): string {
  return why === undefined ? what : `${what}: not done, because ${why}`;
}

function at(where: string | undefined): string {
  return where === undefined ? '' : `, ${where}`;
}

function and(note: string | undefined): string {
  return note === undefined ? '' : `. ${note}`;
}
