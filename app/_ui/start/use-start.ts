import { useActionState, useState } from 'react';
import type { FormAnswer } from '../form/answer';
import type { KeepAction, PreviewAction, Started, StartPreview } from './answers';

/** What is known of the answers as they stand now: an answer to what was typed before counts no more. */
export function useStart(preview: PreviewAction, keep: KeepAction, text: string) {
  const [sent, setSent] = useState<{ text: string; asKept: boolean } | null>(null);
  const [seen, sendLook, isLooking] = useActionState(
    (_before: FormAnswer<StartPreview> | null, form: FormData) => preview(null, form),
    null,
  );
  const [kept, sendKeep, isKeeping] = useActionState(
    (_before: FormAnswer<Started> | null, form: FormData) => keep(null, form),
    null,
  );
  const isBusy = isLooking || isKeeping;
  const isFresh = sent?.text === text && !isBusy;
  const latest = sent?.asKept ? kept : seen;
  const start = (form: FormData, asKept: boolean) => setSent({ text: String(form.get('draft') ?? ''), asKept });
  return {
    /** The latest answer, as long as nothing was typed since. */
    answer: isFresh ? latest : null,
    seen: isFresh && seen?.ok ? seen.value : null,
    done: sent?.asKept && kept?.ok ? kept.value : null,
    isLooking,
    isBusy,
    look: (form: FormData) => {
      start(form, false);
      sendLook(form);
    },
    keepIt: (form: FormData) => {
      start(form, true);
      sendKeep(form);
    },
  };
}
