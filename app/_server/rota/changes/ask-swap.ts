import 'server-only';
import { ok, type Result, refused } from '#core/result';
import type { Rota } from '#core/rota/turns';
import { dayStart, instantOf } from '#core/time/zone';
import { appendRecords } from '#data/records/append-records';
import { addChange, findRotaIds } from '#data/rota/changes';
import type { SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { type SwapRequest, swapRequest } from '#shape/rota/change';
import { now } from '../../clock';
import type { Fault, Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite } from '../../reviews/find-stored-site';
import { rotaOf } from '../rota-of';
import { hasTurn, isInTurn } from './change-parts';
import { tellAsked } from './tell-change';
import { mayAskFor } from './own-person';

export const askSwapShape = swapRequest;

const DAY_MS = 86_400_000;

/** Asks that somebody else take one turn or a part of it, perhaps for one of theirs. They agree, and somebody approves, before it is so. */
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
  return faults.length > 0 ? refused({ why: 'invalid', faults }) : await keep(who, entry, request, at);
}

/** The part of a turn that is given, ms; nothing where it is the whole. */
function partOf({ from, to }: SwapRequest, zone: string): { from: number; to: number } | null {
  if (!(from && to)) return null;
  return { from: instantOf(zone, from.date, from.time), to: instantOf(zone, to.date, to.time) };
}

function faultsOf(request: SwapRequest, rota: Rota, atMs: number): Fault[] {
  const { turn, takes, back } = request;
  const part = partOf(request, rota.site.zone);
  const given = { ...turn, ...part };
  const faults: Fault[] = [];
  const isPast = (date: string) => dayStart(rota.site.zone, date) < atMs - DAY_MS;
  if (takes === turn.person) faults.push({ path: 'takes', message: 'must be somebody else' });
  if (isPast(turn.date) || !hasTurn(rota, turn.person, turn))
    faults.push({ path: 'turn', message: 'must be a turn to come that they have' });
  else if (part && part.to <= part.from) faults.push({ path: 'to', message: 'must be later than its beginning' });
  else if (part && !hasTurn(rota, turn.person, given))
    faults.push({ path: 'from', message: 'must lie, with its end, within the turn that is given' });
  if (isInTurn(rota, takes, given)) faults.push({ path: 'takes', message: 'must not have that turn already' });
  if (back && (back.person !== takes || isPast(back.date) || !hasTurn(rota, takes, back)))
    faults.push({ path: 'back', message: 'must be a turn to come of whoever takes the first' });
  return faults;
}

async function keep(
  who: Who,
  { id: siteId, zone }: SiteEntry,
  request: SwapRequest,
  at: Date,
): Promise<Result<{ site: string }, Refusal>> {
  const { site, entry, turn, takes, back, why } = request;
  const part = partOf(request, zone);
  const ends = part && { fromAt: new Date(part.from), toAt: new Date(part.to) };
  return await inTransaction(async (tx) => {
    const { people, shifts } = await findRotaIds(tx, siteId);
    const [personId, takesId, shiftId] = [people.get(turn.person), people.get(takes), shifts.get(turn.shift)];
    const backShiftId = back ? shifts.get(back.shift) : null;
    if (personId === undefined || takesId === undefined) return refused({ why: 'not-found', what: 'person' });
    if (shiftId === undefined || backShiftId === undefined) return refused({ why: 'not-found', what: 'thing' });
    const swap = { takesId, shiftId, shiftDate: turn.date, backShiftId, backDate: back?.date ?? null, ...ends };
    const change = { id: entry, kind: 'swap', personId, ...swap, why: why || null } as const;
    if (!(await addChange(tx, siteId, { ...change, askedBy: who.id, askedAt: at }))) return ok({ site });
    const body = { by: who.id, change: entry, person: personId, takes: takesId, shift: shiftId, date: turn.date };
    const given = {
      ...body,
      ...(back && { backShift: backShiftId, backDate: back.date }),
      ...(ends && { from: ends.fromAt.toISOString(), to: ends.toAt.toISOString() }),
    };
    await tellAsked(tx, { siteId, change: entry, by: who.id });
    await appendRecords(tx, siteId, [{ kind: 'swap-asked', body: given }], at);
    return ok({ site });
  });
}
