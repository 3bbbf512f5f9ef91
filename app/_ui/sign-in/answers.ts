/** One thing that is wrong with what was sent. */
export interface PersonFault {
  /** Field it is about. */
  path: string;
  message: string;
}

/** What a form of the account pages gets back. */
export type PersonAnswer<T> =
  | { ok: true; value: T }
  | { ok: false; said: string; reason: { why: string; faults?: PersonFault[] } };

/** A server action of the account pages; what it answered before makes no difference to it. */
export type PersonAction<T> = (before: null, form: FormData) => Promise<PersonAnswer<T>>;
