import 'server-only';
import type { Check } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import { ok, refused } from '#core/result';
import { newId } from '#data/new-id';
import { addEntries } from '#data/rounds/entries';
import { type RestRequest, restRequest } from '#shape/rounds/requests';
import type { Who } from '../gate/who';
import { changeRound, type RoundChanged } from './change-round';

export const enterRestShape = restRequest;

/**
 * Records every line of a place that is still blank: as usual, where looking is all there is to it, so that numbers and tests
 * stay blank; or not done, and why.
 */
export async function enterRest(who: Who, { place, notDone, ...address }: RestRequest): Promise<RoundChanged> {
  return await changeRound(who, 'walk', address, async ({ tx, site, round, standing, signatures, at }) => {
    const here = round.sheet.places[place - 1];
    if (!here) return refused({ why: 'not-found', what: 'line of the sheet' });
    if (signatures.length > 0)
      return refused({
        why: 'conflict',
        now: 'This round is signed: what stands on it can be corrected, with a reason.',
      });
    const blank = here.checks.filter(({ key }) => !standing.has(key));
    const entries = blank.flatMap((check) => {
      const value = notDone === undefined ? asUsual(check) : null;
      if (notDone === undefined && value === null) return [];
      const said = { value, notDone: notDone ?? null, note: null, supersedes: null, reason: null };
      return [{ id: newId(), check: check.key, atMs: at.getTime(), by: who.id, ...said, recordedAt: at }];
    });
    await addEntries(tx, site.id, round.id, entries);
    return ok([]);
  });
}

function asUsual(check: Check): EntryValue | null {
  if (check.kind === 'yes-no') return { kind: 'yes-no', asUsual: true };
  return check.kind === 'head-count' ? { kind: 'head-count', count: null } : null;
}
