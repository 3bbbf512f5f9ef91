import { useActionState, useState } from 'react';
import type { Done, FileAction, FileAnswer, Preview } from './answers';

/** An action as a form's state wants it. */
function fresh<T>(action: FileAction<T>) {
  return (_before: FileAnswer<T> | null, form: FormData): Promise<FileAnswer<T> | null> => action(null, form);
}

/** What is known of a file on its way in: the answer to the last look at it, or to the import that followed. */
export function useImport(preview: FileAction<Preview>, keep: FileAction<Done>) {
  const [checked, setChecked] = useState<string | null>(null);
  const [isKept, setKept] = useState(false);
  const [seen, sendLook, isLooking] = useActionState(fresh(preview), null);
  const [kept, sendImport, isImporting] = useActionState(fresh(keep), null);
  const start = (form: FormData, asImport: boolean) => {
    // A form hands its text on with the line ends of the wire; the field holds those of the browser.
    setChecked(String(form.get('text') ?? '').replaceAll('\r\n', '\n'));
    setKept(asImport);
  };
  return {
    checked,
    seen,
    /** The answer to the import; null until one follows the last look. */
    done: isKept ? kept : null,
    isLooking,
    isBusy: isLooking || isImporting,
    look: (form: FormData) => {
      start(form, false);
      sendLook(form);
    },
    importIt: (form: FormData) => {
      start(form, true);
      sendImport(form);
    },
  };
}
