import { useRef, useState } from 'react';
import type { DraftGroup } from '#core/forms/field';
import { answerOf, type FormAnswer } from '../form/answer';
import type { ChangeActions, ChangeOf, Kept, News, Seen } from './answers';

/** How far a change is: typed, looked at, kept. */
export interface ChangeState {
  seen: FormAnswer<Seen> | null;
  kept: FormAnswer<Kept> | null;
  news: readonly News[];
  /** What was typed when the difference was looked at. */
  looked: DraftGroup | null;
  busy: 'looking' | 'keeping' | null;
}

const NOTHING: ChangeState = { seen: null, kept: null, news: [], looked: null, busy: null };

/**
 * Looks at what a change makes different, then at what it does to the reviews, and keeps it when asked.
 *
 * @param apart   what is sent for a change that is no form of a thing; what was typed is then sent field by field
 */
export function useChange(
  actions: ChangeActions,
  of: ChangeOf,
  shown: DraftGroup,
  apart?: Readonly<Record<string, string>>,
) {
  const [state, setState] = useState<ChangeState>(NOTHING);
  /** Counts looks: news of one before is no longer told. */
  const run = useRef(0);
  const look = async (draft: DraftGroup) => {
    const mine = ++run.current;
    setState({ ...NOTHING, looked: draft, busy: 'looking' });
    const seen = await answerOf(actions.preview, formOf(of, draft, shown, apart));
    setState({ ...NOTHING, looked: draft, seen });
    if (!seen.ok || seen.value.touched === 0) return;
    for await (const one of newsOf(actions, formOf(of, draft, shown, apart))) {
      if (run.current !== mine) return;
      setState((before) => ({ ...before, news: [...before.news.filter(({ is }) => is !== 'progress'), one] }));
    }
  };
  const keep = async (draft: DraftGroup, basedOn: number) => {
    setState((before) => ({ ...before, busy: 'keeping' }));
    const form = formOf(of, draft, shown, apart);
    form.set('basedOn', String(basedOn));
    const kept = await answerOf(actions.keep, form);
    setState((before) => ({ ...before, kept, busy: null }));
  };
  return { ...state, look, keep };
}

/** News of the reviews; that the way broke is news as well, and hinders nobody from keeping the change. */
async function* newsOf({ review }: ChangeActions, form: FormData): AsyncGenerator<News> {
  try {
    const answer = await review(null, form);
    if (answer.ok) yield* answer.value;
    else yield { is: 'not-known', names: [], why: 'broken' };
  } catch {
    yield { is: 'not-known', names: [], why: 'broken' };
  }
}

function formOf(
  { site, act, noun, system, key, units }: ChangeOf,
  draft: DraftGroup,
  shown: DraftGroup,
  apart: Readonly<Record<string, string>> | undefined,
): FormData {
  const form = new FormData();
  const typed = { site, act, noun, units, draft: JSON.stringify(draft), shown: JSON.stringify(shown) };
  const fields = apart ? { ...apart, ...draft } : typed;
  for (const [name, value] of Object.entries(fields)) if (typeof value === 'string') form.set(name, value);
  if (!apart && system !== null) form.set('system', system);
  if (!apart && key !== null) form.set('key', key);
  return form;
}
