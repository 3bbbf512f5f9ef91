/**
 * What a telephone has not sent yet: entries that were made where there was no signal. It knows no network and no store; it says
 * what is sent next and what an answer makes of it, so that whatever breaks off in between, each entry arrives once.
 */

/** How the other side took something in. A conflict is kept as well, beside what was there. */
export type Outcome = 'stored' | 'repeat' | 'conflict' | 'refused';

/** What became of something that was sent. */
export interface ItemAnswer {
  id: string;
  outcome: Outcome;
  /** What the person should know of it. */
  said?: string;
}

/** What waits, has arrived, or was refused, on one telephone. */
export interface Outgoing {
  /** Made here: what is sent twice is kept once. */
  id: string;
  /** Counts up on this telephone, for its clock may be put back. */
  seq: number;
  state: 'waiting' | 'kept' | 'refused';
  said: string | null;
  /** Whether it is a call for help, which hangs on nothing that was made before it and waits for none of it. */
  isUrgent?: boolean;
}

/** What is not sent yet, in the order in which it was made. */
export function waiting<I extends Outgoing>(items: readonly I[]): I[] {
  return items.filter(({ state }) => state === 'waiting').sort((a, b) => a.seq - b.seq);
}

/**
 * What is sent next. Order matters, for a correction follows what it corrects and a signature what it is under: so it is always
 * the oldest that wait, and nothing overtakes but a call for help.
 *
 * @param most   how many are sent at once
 */
export function nextBatch<I extends Outgoing>(items: readonly I[], most: number): I[] {
  const all = waiting(items);
  const urgent = all.filter(({ isUrgent }) => isUrgent === true);
  return (urgent.length > 0 ? urgent : all).slice(0, most);
}

/**
 * What the items are once an answer has come. One that the answer does not name waits on; so does one of an answer that never
 * came. What was refused stays, with why, for whoever made it to see.
 */
export function afterAnswer<I extends Outgoing>(items: readonly I[], answers: readonly ItemAnswer[]): I[] {
  const byId = new Map(answers.map((answer) => [answer.id, answer]));
  return items.map((item) => {
    const answer = byId.get(item.id);
    if (!answer || item.state !== 'waiting') return item;
    return { ...item, state: answer.outcome === 'refused' ? 'refused' : 'kept', said: answer.said ?? null };
  });
}
