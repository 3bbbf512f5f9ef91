import type { ItemAnswer } from '#core/rounds/outbox';
import { PACK_FORMAT, type WalkPack } from '#core/rounds/pack';
import { clock } from './device';
import type { Item, Photo, Whose } from './store';

/** Why nothing came of a question: nobody answered, or who asks may not. */
export type Unanswered = 'unreached' | 'not-signed-in' | 'refused';
type Answered<T> = { ok: true; value: T } | { ok: false; why: Unanswered; said: string };

/** ms after which a line that says nothing counts as none. */
const PATIENCE_MS = 20_000;
const UNREACHED = { ok: false, why: 'unreached', said: 'Holdfast gave no answer.' } as const;

/** Fetches what is needed to walk the rounds of a site. */
export async function fetchPack(site: string): Promise<Answered<WalkPack>> {
  const answer = await asked<WalkPack>(address(site), {});
  if (answer.ok && answer.value.format !== PACK_FORMAT)
    return { ok: false, why: 'refused', said: 'Holdfast has become newer: load this page again.' };
  return answer;
}

/** Sends some things, the oldest first. */
export async function sendItems(
  { account, site }: Whose,
  items: readonly Item[],
): Promise<Answered<{ answers: ItemAnswer[] }>> {
  const sent = items.map(asSent);
  const body = JSON.stringify({ account, sentAt: new Date(clock()).toISOString(), items: sent });
  return await asked(address(site), { method: 'POST', body, headers: { 'content-type': 'application/json' } });
}

function asSent(item: Item): object {
  const { id, madeAt, walk, kind } = item;
  const made = { id, madeAt, walk, kind };
  switch (item.kind) {
    case 'entry':
      return { ...made, line: item.line, typed: item.typed };
    case 'sign':
      return { ...made, note: item.note };
    case 'call':
      return { ...made, system: item.system, what: item.what, saw: item.saw, where: item.where };
  }
}

/** Sends a photo. */
export async function sendPhoto({ site, id, entry, takenAt, blob }: Photo): Promise<Answered<ItemAnswer>> {
  const about = new URLSearchParams({ entry, takenAt });
  return await asked(`${address(site)}/photos/${id}?${about}`, { method: 'PUT', body: blob });
}

function address(site: string): string {
  return `/api/rounds/${encodeURIComponent(site)}`;
}

async function asked<T>(url: string, init: RequestInit): Promise<Answered<T>> {
  try {
    const answer = await fetch(url, { ...init, cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS) });
    const told = (await answer.json()) as T & { said?: string };
    if (answer.ok) return { ok: true, value: told };
    const said = told.said ?? `Holdfast answered ${answer.status}.`;
    if (answer.status === 401) return { ok: false, why: 'not-signed-in', said };
    // What is full or busy now may not be later: it is tried again, as if nobody had answered.
    return { ok: false, why: answer.status >= 500 || answer.status === 429 ? 'unreached' : 'refused', said };
  } catch {
    return UNREACHED;
  }
}
