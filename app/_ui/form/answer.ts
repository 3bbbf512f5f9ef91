import type { FieldFault } from '#core/forms/field';

/** What a form gets back: a value, or a refusal with its sentence and every fault, in words and by its field. */
export type FormAnswer<T> =
  | { ok: true; value: T }
  | { ok: false; said: string; faults: string[]; reason: { why: string; faults?: FieldFault[] } };

/** A server action of a form; what it answered before makes no difference to it, so it is shown nothing of it. */
export type FormAction<T> = (before: null, form: FormData) => Promise<FormAnswer<T>>;

/** What an action of a form answers; that no answer came is a refusal as well. */
export async function answerOf<T>(action: FormAction<T>, form: FormData): Promise<FormAnswer<T>> {
  try {
    return await action(null, form);
  } catch {
    return givenUp('unreached', 'Holdfast gave no answer. What you typed is still here: try again.');
  }
}

/** A refusal that the browser itself comes to. @param said its sentence */
export function givenUp(why: string, said: string): FormAnswer<never> {
  return { ok: false, said, faults: [], reason: { why } };
}
