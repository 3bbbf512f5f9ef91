import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { waysOf } from '#data/calls/ways';
import { keysNow } from '#data/keys/keys';
import { keysPlace } from '#shape/keys/requests';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** Who has which key of a site. Instants in ISO, UTC. */
export interface KeysPage {
  site: { key: string; name: string; zone: string };
  keys: { key: string; holder: string | null; place: string | null; at: string; by: string }[];
  /** Who may be given one. */
  people: { account: string; name: string }[];
}

export const listKeysShape = keysPlace;

/** Who has which key; for whoever may hand one on, since it tells a stranger whom to ask. */
export async function listKeys(
  who: Who,
  { site: key }: z.output<typeof listKeysShape>,
): Promise<Result<KeysPage, Refusal>> {
  const found = await siteFor(who, 'hand-over', key);
  if (!found.ok) return found;
  const { id, name, zone } = found.value;
  const [rows, members] = await Promise.all([keysNow(id), waysOf(id)]);
  const names = await accountNames(rows.flatMap(({ holderId, by }) => [holderId ?? [], by].flat()));
  const nameOf = (account: string) => names.get(account) ?? 'somebody';
  const keys = rows.map((row) => ({
    key: row.key,
    holder: row.holderId === null ? null : nameOf(row.holderId),
    place: row.place,
    at: row.at.toISOString(),
    by: nameOf(row.by),
  }));
  const people = members.map((one) => ({ account: one.account, name: one.name ?? 'somebody' }));
  return ok({ site: { key, name, zone }, keys, people });
}
