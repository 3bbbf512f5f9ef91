import 'server-only';
import { ok, refused } from '#core/result';
import type { Check } from '#core/rounds/check';
import { byTwo } from '#core/rounds/by-two';
import { countRound } from '#core/rounds/count';
import { ROLES } from '#core/rota/rota';
import { newId } from '#data/new-id';
import { addSignature, hasRole } from '#data/rounds/signatures';
import { type SignRequest, signRequest } from '#shape/rounds/requests';
import { isAtLeast } from '../gate/may';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';
import { ratesOn } from './find-use';
import { changeRound, type HeldRound, type RoundChanged } from './change-round';

export const signRoundShape = signRequest;

/** Lines that are named when something is blank; the rest are counted. */
const NAMED = 3;

/**
 * Signs a round: whoever is signed in says that each line of its sheet was looked at, or why it was not. While a line is blank
 * it cannot be signed, for blank is not as usual. Where its sheet asks for two, whoever signs after that is the second.
 *
 * @param signedAt   when it was signed, where that was out of reach; now when left out
 */
export async function signRound(
  who: Who,
  { note, ...address }: SignRequest,
  signedAt: Date | null = null,
): Promise<RoundChanged> {
  return await changeRound(who, 'walk', address, async (held) => {
    const { tx, site, round, checks, entries, standing, signatures, at } = held;
    const own = signatures.find(({ kind, by }) => kind !== 'second-look' && by === who.id);
    // What a slow line made somebody send twice is kept once.
    if (own) return ok([]);
    const kind = signatures.some((one) => one.kind === 'signed') ? 'second' : 'signed';
    const against = kind === 'signed' ? firstAgainst(held, who) : await secondAgainst(held, who);
    if (against !== null) return refused({ why: 'conflict', now: against });
    const blank = blankSaid(checks.filter(({ key }) => !standing.has(key)));
    if (blank !== null) return refused({ why: 'conflict', now: blank });
    const signature = { id: newId(), kind, at: signedAt ?? at, by: who.id, note: note ?? null } as const;
    await addSignature(tx, site.id, round.id, signature);
    const { lines, abnormal, notDone, corrected } = countRound(checks, entries, await ratesOn(site, checks, standing));
    const body = { by: who.id, round: round.id, slot: round.slotId, lines, abnormal, notDone, corrected };
    const said = note === undefined ? body : { ...body, note };
    // What was calibrated counts from here on.
    if (kind === 'signed' && checks.some(({ key, kind: of }) => of === 'calibration' && standing.get(key)?.value))
      await askForReviews(tx, site, at);
    return ok([{ kind: kind === 'signed' ? 'round-signed' : 'round-signed-second', body: said }]);
  });
}

/** Why somebody does not sign first; null when they may. Where two sign, whoever walked it does, of whatever role. */
function firstAgainst({ round, site }: HeldRound, who: Who): string | null {
  const least = round.sheet.signing?.by;
  if (!least || byTwo(round.sheet) !== null || isAtLeast(who, least, site.key)) return null;
  return `Not signed: its sheet asks for the signature of a ${least}, or above.`;
}

/** Why somebody does not sign second; null when they may. */
async function secondAgainst({ tx, round, site, signatures }: HeldRound, who: Who): Promise<string | null> {
  const asked = byTwo(round.sheet);
  if (asked === null) return 'Somebody else has signed this round already.';
  if (signatures.some(({ kind }) => kind === 'second')) return 'Two have signed this round already.';
  const { by } = asked;
  const first = signatures.find(({ kind }) => kind === 'signed');
  if (by === null || isAtLeast(who, by, site.key)) return null;
  if (first && (await hasRole(tx, site.id, first.by, ROLES.slice(ROLES.indexOf(by))))) return null;
  return `Not signed: one of the two has to be a ${by}, or above.`;
}

function blankSaid(blank: readonly Check[]): string | null {
  if (blank.length === 0) return null;
  const named = blank.slice(0, NAMED).map(({ what }) => what);
  const more = blank.length > NAMED ? ` and ${blank.length - NAMED} more` : '';
  return `Not signed: blank is not as usual. Still blank: ${named.join('; ')}${more}.`;
}
