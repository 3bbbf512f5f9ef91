'use client';

import { useEffect, useState } from 'react';
import type { Draft, Drafting } from '../form/half-typed';
import { keepDraft, readDrafts, draftKey } from './drafts';
import type { On } from './make';
import { walkKey } from './view';

/**
 * What stands half-typed on the lines of a walk, read once when its page opens: from then on it stands in its fields.
 *
 * @returns   null until it is read
 */
export function useDrafts(on: On): ((line: string, corrects?: string) => Drafting) | null {
  const [read, setRead] = useState<ReadonlyMap<string, Draft> | null>(null);
  const { account, site } = on;
  const walk = walkKey(on.walk);
  useEffect(() => {
    let isGone = false;
    const told = (found: ReadonlyMap<string, Draft>) => isGone || setRead(found);
    readDrafts(account, site, walk).then(told, () => told(new Map()));
    return () => {
      isGone = true;
    };
  }, [account, site, walk]);
  if (read === null) return null;
  return (line, corrects) => ({
    before: () => read.get(draftKey(line, corrects)),
    keep: (draft) => void keepDraft(on, line, corrects, draft),
  });
}
