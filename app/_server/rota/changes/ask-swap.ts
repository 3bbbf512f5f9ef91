import 'server-only';
import { ok, type Result, refused } from '#core/result';
import type { Rota } from '#core/rota/turns';
import { dayStart } from '#core/time/zone';
import { appendRecords } from '#data/records/append-records';
import { addChange, findRotaIds } from '#data/rota/changes';
import { inTransaction } from '#data/transaction';
import { type SwapRequest, swapRequest } from '#shape/rota/change';
import { now } from '../../clock';
import type { Fault, Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite } from '../../reviews/find-stored-site';
import { rotaOf } from '../rota-of';
import { hasTurn } from './change-parts';
import { mayAskFor } from './own-person';

export const askSwapShape = swapRequest;

const DAY_MS = 86_400_000;

/** Asks that somebody else take one turn, perhaps for one of theirs. They agree, and somebody approves, before it is so. */
export async function askSwap(who: Who, request: SwapRequest): Promise<Result<{ site: string }, Refusal>> {
  const { site, turn, takes } = request;
  const found = await findStoredSite(who, 'change-duty', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  if (!(await mayAskFor(who, { siteId: entry.id, site }, turn.person))) return refused({ why: 'not-allowed' });
  if (!stored.facility.people.some(({ key }) => key === takes)) return refused({ why: 'not-found', what: 'person' });
  const at = now();
  const rota = await rotaOf(entry.id, stored.facility, at.getTime() - DAY_MS);
  const faults = faultsOf(request, rota, at.getTime());
  return faults.length > 0 ? refused({ why: 'invalid', faults }) : await keep(who, entry.id, request, at);
}

function faultsOf({ turn, takes, back }: SwapRequest, rota: Rota, atMs: number): Fault[] {
  const faults: Fault[] = [];
  const isPast = (date: string) => dayStart(rota.site.zone, date) < atMs - DAY_MS;
  if (takes === turn.person) faults.push({ path: 'takes', message: 'must be somebody else' });
  if (isPast(turn.date) || !hasTurn(rota, turn.person, turn))
    faults.push({ path: 'turn', message: 'must be a turn to come that they have' });
  if (hasTurn(rota, takes, turn)) faults.push({ path: 'takes', message: 'must not have that turn already' });
  if (back && (back.person !== takes || isPast(back.date) || !hasTurn(rota, takes, back)))
    faults.push({ path: 'back', message: 'must be a turn to come of whoever takes the first' });
  return faults;
}

async function keep(
  who: Who,
  siteId: string,
  { site, entry, turn, takes, back, why }: SwapRequest,
  at: Date,
): Promise<Result<{ site: string }, Refusal>> {
  return await inTransaction(async (tx) => {
    const { people, shifts } = await findRotaIds(tx, siteId);
    const [personId, takesId, shiftId] = [people.get(turn.person), people.get(takes), shifts.get(turn.shift)];
    const backShiftId = back ? shifts.get(back.shift) : null;
    if (personId === undefined || takesId === undefined) return refused({ why: 'not-found', what: 'person' });
    if (shiftId === undefined || backShiftId === undefined) return refused({ why: 'not-found', what: 'thing' });
    const swap = { takesId, shiftId, shiftDate: turn.date, backShiftId, backDate: back?.date ?? null };
    const change = { id: entry, kind: 'swap', personId, ...swap, why: why || null } as const;
    if (!(await addChange(tx, siteId, { ...change, askedBy: who.id, askedAt: at }))) return ok({ site });
    const body = { by: who.id, change: entry, person: personId, takes: takesId, shift: shiftId, date: turn.date };
    const given = back ? { ...body, backShift: backShiftId, backDate: back.date } : body;
    await appendRecords(tx, siteId, [{ kind: 'swap-asked', body: given }], at);
    return ok({ site });
  });
}
