import 'server-only';
import { accountNames } from '#data/accounts/names';
import type { StoredLink } from '#data/records/list-records';
import { thingNames } from '#data/records/thing-names';
import { entryWords, idsIn, kindTitle } from './entry-words';

/** An entry of the record in words. */
export interface ToldEntry {
  /** Number of the link, from 1. */
  seq: number;
  /** UTC, ISO. */
  at: string;
  kind: string;
  /** The kind as it stands in a list. */
  title: string;
  /** What was done. */
  what: string;
  /** Account, or `local`; null for what nobody did. */
  byId: string | null;
  /** Their name. */
  by: string | null;
  body: Record<string, unknown>;
  /** 64 hexadecimal digits. */
  seal: string;
}

/** Puts entries of one site into words, with two questions for all their names. */
export async function toldEntries(siteId: string, links: readonly StoredLink[]): Promise<ToldEntry[]> {
  const ids = new Set(links.flatMap(({ body }) => idsIn(body)));
  const doers = links.flatMap(({ body }) => (typeof body.by === 'string' ? [body.by] : []));
  const things = await thingNames(siteId, ids);
  const accounts = await accountNames([...doers, ...links.flatMap(({ body }) => accountIn(body))]);
  const names = new Map([...accounts, ...things]);
  return links.map(({ seq, at, kind, body, hash }) => {
    const byId = typeof body.by === 'string' ? body.by : null;
    return {
      seq,
      at: at.toISOString(),
      kind,
      title: kindTitle(kind),
      what: entryWords(kind, body, names),
      byId,
      by: byId === null ? null : (names.get(byId) ?? byId),
      body,
      seal: hash,
    };
  });
}

/** The account an entry is about, beside whoever did it. */
function accountIn({ account }: Record<string, unknown>): string[] {
  return typeof account === 'string' ? [account] : [];
}
