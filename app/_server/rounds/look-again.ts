import 'server-only';
import { ok, refused } from '#core/result';
import { ROLES } from '#core/rota/rota';
import { newId } from '#data/new-id';
import { countOthers } from '#data/plans/approvers';
import { addSignature } from '#data/rounds/signatures';
import { type SignRequest, signRequest } from '#shape/rounds/requests';
import { LEAST } from '../gate/may';
import type { Who } from '../gate/who';
import { changeRound, type RoundChanged } from './change-round';

export const lookAgainShape = signRequest;

/** Roles that may look at a round again. */
const LOOKERS = ROLES.slice(ROLES.indexOf(LEAST['second-look']));

/**
 * Second look at a round that was signed: by somebody else than who signed it, unless nobody else at the site may.
 */
export async function lookAgain(who: Who, { note, ...address }: SignRequest): Promise<RoundChanged> {
  return await changeRound(who, 'second-look', address, async ({ tx, site, round, signatures, at }) => {
    const signed = signatures.find(({ kind }) => kind === 'signed');
    if (!signed) return refused({ why: 'conflict', now: 'This round is not signed yet.' });
    const looked = signatures.find(({ kind }) => kind === 'second-look');
    if (looked?.by === who.id) return ok([]);
    if (looked) return refused({ why: 'conflict', now: 'Somebody else has looked at this round already.' });
    const isSole = signed.by === who.id;
    if (isSole && (await countOthers(tx, site.id, who.id, LOOKERS)) > 0) return refused({ why: 'own-work' });
    await addSignature(tx, site.id, round.id, { id: newId(), kind: 'second-look', at, by: who.id, note: note ?? null });
    const body = { by: who.id, round: round.id, slot: round.slotId, soleKeeper: isSole };
    return ok([{ kind: 'round-looked-at', body: note === undefined ? body : { ...body, note } }]);
  });
}
