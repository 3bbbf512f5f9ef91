'use client';

import { type RefObject, useEffect, useRef } from 'react';

/** What stands half-typed in a form: its fields by name, and which of its faces is shown. */
export interface Draft {
  mode: string;
  fields: Record<string, string>;
}

/** What stood in a form before it was left, and what keeps it from now on; null once it was sent. */
export interface Drafting {
  before: () => Draft | undefined;
  keep: (draft: Draft | null) => void;
}

/** ms after the last key until it is kept. */
const PAUSE_MS = 200;

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

/** What a form is given to keep what is half-typed in it. */
interface Drafted {
  form: RefObject<HTMLFormElement | null>;
  /** It was sent, and nothing is half-typed any more. */
  done: () => void;
}

/**
 * Keeps what is half-typed in a form, and puts it back when the form is there again: also into a field that only appears once
 * something else was chosen.
 *
 * @param mode      which of its faces the form shows
 * @param setMode   has it show another
 */
export function useDraft(drafting: Drafting, mode: string, setMode: (mode: string) => void): Drafted {
  const form = useRef<HTMLFormElement>(null);
  const latest = useRef({ drafting, mode, setMode, isDone: false });
  Object.assign(latest.current, { drafting, mode, setMode });
  useEffect(() => {
    const [element, now] = [form.current, latest.current];
    if (!element) return;
    const before = now.drafting.before();
    if (before && before.mode !== now.mode) now.setMode(before.mode);
    const keep = (fields: Draft['fields']) => now.isDone || now.drafting.keep({ mode: now.mode, fields });
    return watch(element, { ...before?.fields }, keep);
  }, []);
  const done = () => {
    latest.current.isDone = true;
    latest.current.drafting.keep(null);
  };
  return { form, done };
}

/** Puts back what stood in the fields of a form, and has kept what is typed there. @returns what ends it */
function watch(form: HTMLFormElement, fields: Draft['fields'], keep: (fields: Draft['fields']) => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const now = () => {
    timer = undefined;
    keep({ ...fields });
  };
  const typed = ({ target }: Event) => {
    if (!isField(target)) return;
    if (target.type !== 'radio' || ('checked' in target && target.checked)) fields[target.name] = target.value;
    clearTimeout(timer);
    timer = setTimeout(now, PAUSE_MS);
  };
  const put = () => {
    for (const field of form.elements) if (isField(field)) putBack(field, fields[field.name]);
  };
  put();
  const appearing = new MutationObserver(put);
  appearing.observe(form, { childList: true, subtree: true });
  form.addEventListener('input', typed);
  return () => {
    appearing.disconnect();
    form.removeEventListener('input', typed);
    if (timer === undefined) return;
    clearTimeout(timer);
    now();
  };
}

function isField(target: unknown): target is Field {
  const isOne =
    target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
  return isOne && target.name !== '' && target.type !== 'hidden' && target.type !== 'file';
}

/** What is chosen or typed already stays. */
function putBack(field: Field, value: string | undefined): void {
  if (value === undefined) return;
  if (field.type === 'radio') {
    // Pressed, so that what follows from the choice appears.
    if (field.value === value && field instanceof HTMLInputElement && !field.checked && isFirst(field)) field.click();
  } else if (field.value === '' && document.activeElement !== field) field.value = value;
}

/** Whether nothing of its group is chosen yet. */
function isFirst({ form, name }: HTMLInputElement): boolean {
  const group = form?.elements.namedItem(name);
  return !(group instanceof RadioNodeList) || group.value === '';
}
