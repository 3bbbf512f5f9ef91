import 'server-only';
import { revalidatePath } from 'next/cache';
import { headers } from 'next/headers';
import type { z } from 'zod';
import { type Result, refused } from '#core/result';
import { hasRoom } from '../machine/has-room';
import type { Fault, Refusal } from './refusal';
import { faultWords, refusalWords } from './refusal-words';
import { pass, type UseCase } from './use-case';
import { askAnew, type Who, whoAsks } from './who';

/** What a form gets back. A refusal comes with its sentence, so that the form need not know how to word it. */
export type Answer<T> = { ok: true; value: T } | { ok: false; reason: Refusal; said: string; faults: string[] };

/** A server action for `useActionState`. */
export type Action<T> = (before: Answer<T> | null, form: FormData) => Promise<Answer<T>>;

/**
 * Makes a server action of a use case. A file that was chosen in the form counts as its text; a field left empty counts as
 * not given.
 *
 * @param shape     what the form's fields must be
 * @param carryOut   what to do
 * @param refresh   paths whose pages show something else once it is done
 * @param always    whether it is done on a full disk as well: it ends somebody's access, or only looks
 * @param asBytes   whether a chosen file is handed on as its name and its bytes: letters may be written in many ways
 */
export function act<S extends z.ZodType, T>(
  shape: S,
  carryOut: UseCase<z.output<S>, T>,
  refresh: (value: T) => string[] = () => [],
  { always = false, asBytes = false }: { always?: boolean; asBytes?: boolean } = {},
): Action<T> {
  const carried = async (who: Who | null, form: FormData): Promise<Result<T, Refusal>> => {
    // Before anything is begun that could break off half-way; whoever is not known learns nothing of the disk.
    if (who && !always && !(await hasRoom())) return refused({ why: 'no-room' });
    return await pass(shape, carryOut, who, asBytes ? await fieldsWithBytes(form) : await fieldsOf(form));
  };
  return async (_before, form) => {
    const sent = await headers();
    const who = await whoAsks(sent);
    const answer = await carried(who, form).finally(() => askAnew(sent));
    if (!answer.ok) return refusalAnswer(answer.reason);
    for (const path of refresh(answer.value)) revalidatePath(path);
    return answer;
  };
}

/** A refusal as a form gets it back. */
export function refusalAnswer(reason: Refusal): Answer<never> {
  return { ok: false, reason, said: refusalWords(reason), faults: faultsOf(reason).map(faultWords) };
}

function faultsOf(reason: Refusal): Fault[] {
  return reason.why === 'invalid' ? reason.faults : [];
}

/** The fields of a form that were filled in; a chosen file counts as its text. */
export async function fieldsOf(form: FormData): Promise<Record<string, string>> {
  const fields: Record<string, string> = {};
  for (const [name, given] of form) {
    const text = typeof given === 'string' ? keepable(given) : await given.text();
    // A form may offer one field twice, to be pasted into or chosen as a file: the one that was filled in counts.
    if (text !== '' && !name.startsWith('$')) fields[name] = text;
  }
  return fields;
}

/** The fields of a form that were filled in, a chosen file as its name and its bytes. */
async function fieldsWithBytes(form: FormData): Promise<Record<string, unknown>> {
  const fields: Record<string, unknown> = {};
  for (const [name, given] of form) {
    if (name.startsWith('$') || given === '') continue;
    if (typeof given === 'string') fields[name] = keepable(given);
    else if (given.size > 0)
      fields[name] = { name: keepable(given.name), bytes: new Uint8Array(await given.arrayBuffer()) };
  }
  return fields;
}

/** Without the one character that PostgreSQL takes into no text. */
function keepable(typed: string): string {
  return typed.replaceAll('\0', '');
}
