'use client';

import { useEffect } from 'react';
import { isSame } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import { FaultSummary } from '../form/fault-summary';
import { FormFields } from '../form/form-fields';
import { useDraft } from '../form/use-draft';
import type { ChangeActions, ChangeOf, News, Seen } from './answers';
import { KeptNote } from './kept-note';
import { SeenChange } from './seen-change';
import { useChange } from './use-change';
import style from './describe.module.css';

interface ThingFormProps {
  fields: readonly Field[];
  /** What the form shows at first. */
  shown: DraftGroup;
  of: ChangeOf;
  actions: ChangeActions;
  /** Whether the person may change anything. */
  mayDescribe: boolean;
}

/** What the button that keeps a change says. */
const KEEP: Record<ChangeOf['act'], string> = {
  change: 'Keep the change',
  add: 'Add it',
  replace: 'Replace it',
  move: 'Move it',
  retire: 'Retire it',
};

/** A form for one thing: typed, looked at, and then kept. What was typed stays whatever is answered. */
export function ThingForm({ fields, shown, of, actions, mayDescribe }: ThingFormProps) {
  const { draft, change } = useDraft(shown);
  const { seen, kept, news, looked, busy, look, keep } = useChange(actions, of, shown);
  const isTouched = !isSame(draft, shown);
  useWarning(isTouched && kept?.ok !== true);
  if (kept?.ok) return <KeptNote kept={kept.value} of={of} />;
  const isFresh = looked !== null && isSame(looked, draft);
  const refusal = kept && !kept.ok ? kept : seen && !seen.ok ? seen : null;
  const faults = refusal?.reason.faults ?? [];
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void look(draft);
      }}
    >
      {refusal ? <FaultSummary said={refusal.said} faults={faults} fields={fields} /> : null}
      <fieldset disabled={!mayDescribe} className={style.whole}>
        <FormFields fields={fields} draft={draft} state={{ faults, change }} more="More figures" />
        <p className={style.buttons}>
          <button type="submit" className={style.first} disabled={busy !== null}>
            {busy === 'looking' ? 'Looking…' : 'See what it changes'}
          </button>
          <span className={style.hint}>Nothing is kept yet.</span>
        </p>
      </fieldset>
      <p role="status" className={style.status}>
        {seen && looked && !isFresh ? 'What you typed has changed since: look at the difference again.' : null}
        {seen?.ok && isFresh ? statusSaid(seen.value, news, of.act) : null}
      </p>
      {seen?.ok && isFresh ? <SeenChange seen={seen.value} news={news} /> : null}
      {seen?.ok && isFresh && (seen.value.groups.length > 0 || of.act === 'replace') ? (
        <p className={style.buttons}>
          <button
            type="button"
            className={style.first}
            disabled={busy !== null}
            onClick={() => void keep(draft, seen.value.basedOn)}
          >
            {busy === 'keeping' ? 'Keeping…' : KEEP[of.act]}
          </button>
        </p>
      ) : null}
    </form>
  );
}

/** Where a look stands, in a sentence that is read out when it changes. */
function statusSaid({ groups, touched }: Seen, news: readonly News[], act: ChangeOf['act']): string {
  const changes = groups.reduce((sum, group) => sum + group.changes.length, 0);
  if (changes === 0 && act === 'replace') return 'The new one is like the one that goes: no figure changes.';
  if (changes === 0) return 'This says what is described already: there is nothing to keep.';
  const counted = `${changes} ${changes === 1 ? 'difference' : 'differences'}.`;
  if (touched === 0) return `${counted} No review depends on it.`;
  const known = news.filter(({ is }) => is === 'system').length;
  if (news.some(({ is }) => is === 'not-known')) return `${counted} What it does to the reviews is not known in full.`;
  return known === touched
    ? `${counted} What it does to the reviews stands below.`
    : `${counted} What it does to the reviews is being worked out; you may keep it without waiting.`;
}

/** Has the browser ask before a page with something typed in it is left. */
function useWarning(isNeeded: boolean): void {
  useEffect(() => {
    if (!isNeeded) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [isNeeded]);
}
