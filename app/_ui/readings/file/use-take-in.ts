import { useState, useTransition } from 'react';
import type { Delimiter, Encoding, LayoutDraft } from '#core/readings/file/layout';
import { answerOf, type FormAction, type FormAnswer, givenUp } from '../../form/answer';
import type { LookView, TakenView } from './look-view';

/** Bytes of a file that are sent at most. */
const LARGEST = 20 * 1024 * 1024;

/** How a file is to be read, where somebody says it. */
export interface ReadAs {
  encoding?: Encoding;
  delimiter?: Delimiter;
  layout?: string;
}

/** A file on its way in: what is known of it, what is said of it, and what came of it. */
export function useTakeIn(site: string, look: FormAction<LookView>, takeIn: FormAction<TakenView>) {
  const [file, setFile] = useState<File | null>(null);
  const [seen, setSeen] = useState<FormAnswer<LookView> | null>(null);
  const [draft, setDraft] = useState<LayoutDraft | null>(null);
  const [isFresh, setFresh] = useState(false);
  const [taken, setTaken] = useState<FormAnswer<TakenView> | null>(null);
  const [isBusy, start] = useTransition();

  const lookAt = (chosen: File, said: LayoutDraft | null, as: ReadAs = {}) =>
    start(async () => {
      setTaken(null);
      const fields = { ...as, ...(said ? { draft: JSON.stringify(said) } : {}) };
      const answer = chosen.size > LARGEST ? tooLarge() : await answerOf(look, formOf(site, chosen, fields));
      setSeen(answer);
      setFresh(true);
      if (answer.ok) setDraft(answer.value.draft);
    });
  return {
    file,
    seen,
    draft,
    /** Whether what is shown is of the draft as it stands. */
    isFresh,
    taken,
    isBusy,
    choose: (chosen: File | null) => {
      setFile(chosen);
      setSeen(null);
      setDraft(null);
      setTaken(null);
      if (chosen) lookAt(chosen, null);
    },
    change: (changed: LayoutDraft) => {
      setDraft(changed);
      setFresh(false);
      setTaken(null);
    },
    readAs: (as: ReadAs) => file && lookAt(file, null, as),
    lookAgain: () => file && draft && lookAt(file, draft, { encoding: draft.encoding, delimiter: draft.delimiter }),
    take: (name: string) =>
      file &&
      draft &&
      start(async () => setTaken(await answerOf(takeIn, formOf(site, file, { name, draft: JSON.stringify(draft) })))),
  };
}

function formOf(site: string, file: File, fields: Readonly<Record<string, string>>): FormData {
  const form = new FormData();
  form.set('site', site);
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  form.set('file', file);
  return form;
}

function tooLarge(): FormAnswer<never> {
  return givenUp('too-large', 'This file is larger than 20 MB: cut it in parts.');
}
