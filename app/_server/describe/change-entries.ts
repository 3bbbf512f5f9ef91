import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Difference } from '#core/facility/difference';
import type { Saved } from '#data/facility/save-facility';
import type { RecordEntry } from '#data/records/seal';
import type { EditRequest } from '#shape/describe/edit';
import type { DifferenceGroup } from '../facility/compare';
import { differenceHead, differenceWords } from '../facility/difference-words';
import { planEntries } from '../facility/import-entries';
import type { Who } from '../gate/who';
import { THING_KINDS } from './things';

/** What was done to a description. */
export interface DoneChange {
  edit: EditRequest;
  before: Facility;
  after: Facility;
  groups: readonly DifferenceGroup[];
  saved: Saved;
  revision: number;
  /** Id of the thing; null for the site itself. */
  thing: string | null;
  /** Id of the one that was replaced. */
  former: string | undefined;
  why: string | undefined;
  on: string | undefined;
}

/** Fields that hold names or keys of persons: that they changed is told, not to what. */
const OF_PERSONS = /(^|\/)(people|answeredBy|watchdog|off|tests|by)(\/|$)/;

/**
 * What the record gains by a change of the description: the change, and each plan that came into force with it. No entry
 * holds the name or the key of a person.
 */
export function changeEntries(who: Who, done: DoneChange): RecordEntry[] {
  const { edit, saved, revision, thing, former, why, on, before, after, groups } = done;
  const { act, noun, system, key } = edit;
  const isPerson = noun === 'person';
  const body = {
    by: who.id,
    act,
    noun: THING_KINDS[noun].one,
    ...(thing === null ? {} : { thing }),
    ...(former === undefined ? {} : { former }),
    ...(system === undefined ? {} : { system }),
    ...(key === undefined || isPerson ? {} : { key }),
    ...(why === undefined ? {} : { why }),
    ...(on === undefined ? {} : { on }),
    revision,
    changes: groups.flatMap(({ changes }) => changes).map((one) => recordWords(one, before, after)),
  };
  return [{ kind: 'description-changed', body }, ...planEntries(who, saved.plans)];
}

/** A difference in words that name no person. */
function recordWords(one: Difference, before: Facility, after: Facility): string {
  if (one.path.startsWith('people/')) {
    const [, , field] = one.path.split('/');
    const what = field === undefined ? '' : `, ${field === 'travelMin' ? 'travel' : field}`;
    return `person of the rota${what}: ${field === undefined ? ROTA[one.kind] : 'changed'}`;
  }
  if (OF_PERSONS.test(one.path)) return `${differenceHead(one, before, after).head}: changed`;
  return differenceWords(one, before, after);
}

const ROTA: Record<Difference['kind'], string> = { added: 'new', removed: 'no longer there', changed: 'changed' };
