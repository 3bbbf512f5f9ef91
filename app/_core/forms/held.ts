/** Ids that a form is carried out under, by the names of its hidden fields: sent twice, it is done once. */
export type Ids = Readonly<Record<string, string>>;

/** What came of sending a form. */
export interface Answered {
  ok: boolean;
}

/** The ids that a form goes by, and the answer after which it took them up. */
export interface Held {
  ids: Ids;
  after: Answered | null;
}

/**
 * What a form goes by once a page was drawn anew, or an answer came. A page has new ids each time it is drawn; a form that
 * took them up at once would lose what is typed in it, and do twice what was sent twice. So it keeps its own until it is done.
 */
export function heldAfter(held: Held, given: Ids, answer: Answered | null): Held {
  const isDone = answer?.ok === true && answer !== held.after;
  return isDone && nameOf(given) !== nameOf(held.ids) ? { ids: given, after: answer } : held;
}

/** The ids as one text, by which what is typed under them is told from what is typed under others. */
export function nameOf(ids: Ids): string {
  return Object.values(ids).join(' ');
}
