'use client';

import { useActionState } from 'react';
import type { FileAction, FileAnswer } from '../import/answers';
import style from './empty-site.module.css';

/** The button that loads the demo; the page shows its systems once it is there. */
export function LoadDemo({ load }: { load: FileAction<unknown> }) {
  const [answer, run, isLoading] = useActionState(
    (_before: FileAnswer<unknown> | null, form: FormData): Promise<FileAnswer<unknown> | null> => load(null, form),
    null,
  );
  return (
    <form action={run}>
      <button type="submit" className={style.first} disabled={isLoading}>
        {isLoading ? 'Loading the demo…' : 'Load the demo'}
      </button>
      <p>A harbour-town aquarium and a shop with two branches, all invented, well and badly protected.</p>
      <p role="status">{answer?.ok === false ? answer.said : ''}</p>
    </form>
  );
}
