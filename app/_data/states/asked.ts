import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';
import type { StateAct } from './change-state';

/** A state that looks as if it had begun. */
export interface StateAskedRow {
  id: string;
  systemId: string;
  state: StateAct['state'];
  why: 'watts' | 'clock';
  since: Date;
  askedAt: Date;
  /** Keys of the equipment that says so. */
  detail: { equipment: readonly string[] };
}

/** Asks whether a state has begun. @returns whether it was not asked of already */
export async function askState(
  tx: Pick<Transaction, 'stateAsked'>,
  siteId: string,
  asked: StateAskedRow,
): Promise<boolean> {
  const { count } = await tx.stateAsked.createMany({
    data: [{ siteId, ...asked, detail: { equipment: [...asked.detail.equipment] } }],
    skipDuplicates: true,
  });
  return count > 0;
}

/** Keeps the answer. @param runId   the event that began it; null when it was not so */
export async function answerAsked(
  tx: Transaction,
  siteId: string,
  askedId: string,
  answer: { at: Date; by: string; runId: string | null },
): Promise<void> {
  await tx.stateAnswered.create({ data: { siteId, askedId, isSo: answer.runId !== null, ...answer } });
}

/** A question by its id, with whoever answered it. */
export async function findAsked(
  tx: Transaction,
  siteId: string,
  id: string,
): Promise<(StateAskedRow & { answeredBy: string | null }) | null> {
  const row = await tx.stateAsked.findUnique({ where: { siteId_id: { siteId, id } }, include: { answer: true } });
  return row && { ...asRow(row), answeredBy: row.answer?.by ?? null };
}

/** What nobody has answered, asked since an instant, the latest first. */
export async function openAsked(siteId: string, since: Date): Promise<StateAskedRow[]> {
  const rows = await database().stateAsked.findMany({
    where: { siteId, answer: null, askedAt: { gte: since }, system: { retiredAt: null } },
    orderBy: [{ since: 'desc' }, { id: 'desc' }],
  });
  return rows.map(asRow);
}

type Row = Omit<StateAskedRow, 'state' | 'why' | 'detail'> & { state: string; why: string; detail: unknown };

function asRow({ id, systemId, state, why, since, askedAt, detail }: Row): StateAskedRow {
  return {
    ...{ id, systemId, since, askedAt },
    state: state as StateAskedRow['state'],
    why: why as StateAskedRow['why'],
    detail: detail as StateAskedRow['detail'],
  };
}
