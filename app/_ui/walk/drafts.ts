import type { Draft } from '../form/half-typed';
import { clock } from './device';
import { store, type WalkName, type Whose } from './store';
import { walkKey } from './view';

interface OnWalk extends Whose {
  walk: WalkName;
}

/** What a draft is called: by its line, and by the entry that is corrected. */
export function draftKey(line: string, corrects?: unknown): string {
  return typeof corrects === 'string' ? `${line} ${corrects}` : line;
}

/** What stands half-typed on the lines of a walk. @param walk its key */
export async function readDrafts(account: string, site: string, walk: string): Promise<Map<string, Draft>> {
  const kept = await store().drafts.where('[account+site+walk]').equals([account, site, walk]).toArray();
  return new Map(kept.map(({ line, mode, fields }) => [line, { mode, fields }]));
}

/**
 * Keeps what is half-typed; nothing is kept of an empty form, nor of a line that was entered meanwhile. A browser that keeps
 * nothing more loses a draft and no more: that it is full is said where an entry is saved.
 */
export async function keepDraft(
  on: OnWalk,
  line: string,
  corrects: string | undefined,
  draft: Draft | null,
): Promise<void> {
  const { account, site, walk } = on;
  const { items, drafts } = store();
  const key = draftKey(line, corrects);
  const named = { account, site, walk: walkKey(walk), line: key };
  const kept = draft && Object.values(draft.fields).some((text) => text !== '') ? draft : null;
  try {
    await store().transaction('rw', items, drafts, async () => {
      const own = await items.where('[account+site]').equals([account, site]).toArray();
      const isEntered = own.some(
        (item) =>
          item.kind === 'entry' &&
          item.state !== 'refused' &&
          walkKey(item.walk) === named.walk &&
          draftKey(item.line.key, item.typed.supersedes) === key,
      );
      if (kept === null || isEntered) await drafts.delete([account, site, named.walk, key]);
      else await drafts.put({ ...named, ...kept, atMs: clock() });
    });
  } catch {
    // What is typed still stands in its field.
  }
}
