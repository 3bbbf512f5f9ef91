import { useCallback, useState } from 'react';
import { groupOf, withPart } from '#core/forms/draft';
import type { Draft, DraftGroup } from '#core/forms/field';
import type { FieldPath, FormState } from './form-state';

/** What is being typed into a form. It stays whatever is answered. @param first what the form shows at first */
export function useDraft(first: DraftGroup): { draft: DraftGroup; change: FormState['change'] } {
  const [draft, setDraft] = useState<Draft>(first);
  const change = useCallback(
    (path: FieldPath, part: Draft | undefined) => setDraft((before) => withPart(before, path, part)),
    [],
  );
  return { draft: groupOf(draft), change };
}
