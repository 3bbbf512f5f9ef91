import 'server-only';
import { ok, refused } from '#core/result';
import type { Check } from '#core/rounds/check';
import { countRound } from '#core/rounds/count';
import { newId } from '#data/new-id';
import { addSignature } from '#data/rounds/signatures';
import { type SignRequest, signRequest } from '#shape/rounds/requests';
import { isAtLeast } from '../gate/may';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';
import { ratesOn } from './find-use';
import { changeRound, type RoundChanged } from './change-round';

export const signRoundShape = signRequest;

/** Lines that are named when something is blank; the rest are counted. */
const NAMED = 3;

/**
 * Signs a round: whoever is signed in says that each line of its sheet was looked at, or why it was not. While a line is blank
 * it cannot be signed, for blank is not as usual.
 *
 * @param signedAt   when it was signed, where that was out of reach; now when left out
 */
export async function signRound(
  who: Who,
  { note, ...address }: SignRequest,
  signedAt: Date | null = null,
): Promise<RoundChanged> {
  return await changeRound(
    who,
    'walk',
    address,
    async ({ tx, site, round, checks, entries, standing, signatures, at }) => {
      const signed = signatures.find(({ kind }) => kind === 'signed');
      // What a slow line made somebody send twice is kept once.
      if (signed?.by === who.id) return ok([]);
      if (signed) return refused({ why: 'conflict', now: 'Somebody else has signed this round already.' });
      const least = round.sheet.signing?.by;
      if (least && !isAtLeast(who, least, site.key))
        return refused({
          why: 'conflict',
          now: `Not signed: its sheet asks for the signature of a ${least}, or above.`,
        });
      const blank = blankSaid(checks.filter(({ key }) => !standing.has(key)));
      if (blank !== null) return refused({ why: 'conflict', now: blank });
      await addSignature(tx, site.id, round.id, {
        id: newId(),
        kind: 'signed',
        at: signedAt ?? at,
        by: who.id,
        note: note ?? null,
      });
      const { lines, abnormal, notDone, corrected } = countRound(
        checks,
        entries,
        await ratesOn(site, checks, standing),
      );
      const body = { by: who.id, round: round.id, slot: round.slotId, lines, abnormal, notDone, corrected };
      // What was calibrated counts from here on.
      if (checks.some(({ key, kind }) => kind === 'calibration' && standing.get(key)?.value))
        await askForReviews(tx, site, at);
      return ok([{ kind: 'round-signed', body: note === undefined ? body : { ...body, note } }]);
    },
  );
}

function blankSaid(blank: readonly Check[]): string | null {
  if (blank.length === 0) return null;
  const named = blank.slice(0, NAMED).map(({ what }) => what);
  const more = blank.length > NAMED ? ` and ${blank.length - NAMED} more` : '';
  return `Not signed: blank is not as usual. Still blank: ${named.join('; ')}${more}.`;
}
