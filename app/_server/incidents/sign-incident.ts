import 'server-only';
import type { Signer } from '#core/incidents/incident';
import { signingOf } from '#core/incidents/state';
import { standing } from '#core/incidents/story';
import { ok, refused } from '#core/result';
import { ROLES, type Role } from '#core/rota/rota';
import { digestOf } from '#data/incidents/entries';
import { countOthers } from '#data/plans/approvers';
import type { Transaction } from '#data/transaction';
import { type SignRequest, signRequest } from '#shape/incidents/investigate-request';
import { LEAST } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { type Changed, changeIncident, type Held } from './change-incident';

export const signIncidentShape = signRequest;

/** Roles that may sign at all. */
const SIGNING = ROLES.slice(ROLES.indexOf(LEAST.investigate));

/**
 * Signs an incident: a lead and a manager, two accounts, over the very same entries; or a sole keeper, with a reason. Whoever
 * looked at something older looks again.
 */
export async function signIncident(who: Who, request: SignRequest): Promise<Changed> {
  return await changeIncident(who, 'investigate', request, async (held) => {
    const { entries, incident, at } = held;
    if (entries.some(({ id }) => id === request.entry)) return ok(null);
    const sha256 = digestOf(incident, entries);
    if (sha256 !== request.sha256)
      return refused({ why: 'conflict', now: 'Something was added since you looked: read it, then sign.' });
    const wrong = await wrongIn(who, held, request);
    if (wrong) return refused(wrong);
    const covers = entries.filter(({ kind }) => kind !== 'signature').map(({ id }) => id);
    const body = { as: request.as, covers, sha256, why: request.why };
    const { entry: id } = request;
    const [atMs, recordedMs] = [at.getTime(), at.getTime()];
    return ok({ id, kind: 'signature', atMs, recordedMs, by: who.id, body, supersedes: null, reason: null });
  });
}

async function wrongIn(who: Who, { tx, site, entries }: Held, request: SignRequest): Promise<Refusal | null> {
  if (signingOf(entries).state === 'signed')
    return { why: 'conflict', now: 'It is signed already: what came later stands as an addition.' };
  const own = standing(entries, 'signature').some(({ by, body }) => by === who.id && body.sha256 === request.sha256);
  if (own) return { why: 'own-work' };
  const allowed = await signersFor(tx, site, who);
  if (!allowed.includes(request.as)) return { why: 'not-allowed' };
  if (request.as === 'sole-keeper' && request.why === undefined)
    return { why: 'invalid', faults: [{ path: 'why', message: 'must say why nobody else signs' }] };
  return null;
}

/** As what somebody may sign. A sole keeper is one beside whom nobody else at the site may sign. */
export async function signersFor(
  tx: Pick<Transaction, '$queryRaw'> | undefined,
  site: { id: string; key: string },
  who: Who,
): Promise<Signer[]> {
  const role: Role | null = Object.hasOwn(who.at, site.key) ? (who.at[site.key] ?? null) : who.everywhere;
  const rank = role === null ? -1 : ROLES.indexOf(role);
  if (rank < ROLES.indexOf('lead')) return [];
  const signers: Signer[] = rank >= ROLES.indexOf('manager') ? ['lead', 'manager'] : ['lead'];
  const isSole = (await countOthers(tx, site.id, who.id, SIGNING)) === 0;
  return isSole ? [...signers, 'sole-keeper'] : signers;
}
