import 'server-only';
import { changeState, mayCome } from '#core/rota/change';
import { ok, type Result, refused } from '#core/result';
import { appendRecords } from '#data/records/append-records';
import { addChangeEvent, findChange, type KeptChange } from '#data/rota/changes';
import { holdSite } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { type ChangeAnswer, changeAnswer } from '#shape/rota/change';
import { now } from '../../clock';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite, type SiteToday } from '../../reviews/find-stored-site';
import { rotaOf } from '../rota-of';
import { answererOf } from './answerer';
import { effectOfChange, minutesIn, stillStands, stretchOf } from './change-parts';
import { tellCame } from './tell-change';
import { whyNot } from './who-may-answer';

export const answerChangeShape = changeAnswer;

/**
 * Says what comes of leave or a swap that was asked for. Whoever takes a turn agrees to it, or a lead for them; a lead
 * approves it, but not a change of their own duties while somebody else could. What would leave more hours unanswered than
 * the page said is not approved before it was looked at again.
 */
export async function answerChange(who: Who, answer: ChangeAnswer): Promise<Result<{ site: string }, Refusal>> {
  const found = await findStoredSite(who, 'change-duty', answer.site);
  if (!found.ok) return found;
  const { entry } = found.value;
  const asker = await answererOf(who, entry);
  const at = now();
  return await inTransaction(async (tx) => {
    // Approved one after the other, so that each is held to what the one before has left.
    await holdSite(tx, entry, at);
    const change = await findChange(tx, entry.id, answer.change);
    if (!change) return refused({ why: 'not-found', what: 'entry' });
    const refusal = whyNot(asker, change, answer.comes) ?? (await hindrance(tx, found.value, change, answer, at));
    if (refusal) return refused(refusal);
    const event = { changeId: change.id, number: change.events.length + 1, kind: answer.comes, by: who.id, at };
    if (!(await addChangeEvent(tx, entry.id, { ...event, why: answer.why || null })))
      return refused({ why: 'conflict', now: 'Somebody was quicker: look again what has become of it.' });
    const body = { by: who.id, change: change.id, of: change.kind, person: change.person.id };
    await appendRecords(tx, entry.id, [{ kind: `duty-change-${answer.comes}`, body }], at);
    await tellCame(tx, { siteId: entry.id, change: change.id, by: who.id }, answer.comes);
    return ok({ site: answer.site });
  });
}

/** Why it cannot come of a change as it stands now. */
async function hindrance(
  tx: Transaction,
  { entry, stored }: SiteToday,
  change: KeptChange,
  { comes, shownMin = 0 }: ChangeAnswer,
  at: Date,
): Promise<Refusal | null> {
  const state = changeState(change.events.map(({ kind }) => kind));
  if (!mayCome(change.kind, state).includes(comes))
    return { why: 'conflict', now: `It was ${state.replace('-', ' ')} meanwhile.` };
  if (comes !== 'approved') return null;
  const { from, to } = stretchOf(change, entry.zone);
  if (to <= at.getTime()) return { why: 'too-late' };
  const rota = await rotaOf(entry.id, stored.facility, Math.min(from, at.getTime()) - 14 * 86_400_000, tx);
  if (!stillStands(rota, change))
    return { why: 'conflict', now: 'A turn of it is no longer with whoever gives it. Ask for it anew.' };
  const { nobody } = effectOfChange(rota, change, stored.facility.site.competences);
  return minutesIn(nobody) > shownMin + 1
    ? {
        why: 'conflict',
        now: 'It would leave more hours with nobody than this page said. Look again, and approve it then.',
      }
    : null;
}
