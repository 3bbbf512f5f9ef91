import 'server-only';
import type { z } from 'zod';
import { mayCome } from '#core/rota/change';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { newId } from '#data/new-id';
import { listChanges } from '#data/rota/changes';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../../clock';
import { may } from '../../gate/may';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite } from '../../reviews/find-stored-site';
import { rotaOf } from '../rota-of';
import { answererOf } from './answerer';
import { type ChangeLine, lineOf } from './change-line';
import { type Offered, offeredTo } from './offered';

/** Leave and swaps of a site, and what whoever looks may ask for. */
export interface ChangesPage {
  site: { key: string; name: string; zone: string };
  /** Those that wait for an answer, the oldest first. */
  open: ChangeLine[];
  /** Those that have come to something, the newest first. */
  past: ChangeLine[];
  offered: Offered;
  /** Ids for what is asked for next. */
  ids: { leave: string; swap: string };
  /** Whether they may ask at all. */
  mayAsk: boolean;
}

export const getChangesShape = sitePlace;

const DAY_MS = 86_400_000;
/** How far back is shown. */
const BACK_MS = 28 * DAY_MS;

/** The leave and the swaps of a site: what waits for an answer, with what it would leave, and what has come of the others. */
export async function getChanges(
  who: Who,
  { site }: z.output<typeof getChangesShape>,
): Promise<Result<ChangesPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  const { facility } = stored;
  const at = now().getTime();
  const [changes, rota, asker] = await Promise.all([
    listChanges(entry.id, new Date(at - BACK_MS)),
    rotaOf(entry.id, facility, at - 2 * BACK_MS),
    answererOf(who, entry),
  ]);
  const accounts = await accountNames(changes.flatMap((one) => [one.askedBy, ...one.events.map(({ by }) => by)]));
  const lines = changes.map((change) => lineOf(change, { facility, rota, accounts, asker, atMs: at }));
  const isOpen = ({ kind, state }: ChangeLine) => mayCome(kind, state).includes('withdrawn');
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    open: lines.filter(isOpen).reverse(),
    past: lines.filter((line) => !isOpen(line)),
    offered: offeredTo(asker, facility, rota, at),
    ids: { leave: newId(), swap: newId() },
    mayAsk: may(who, 'change-duty', site) && (asker.isApprover || asker.self !== null),
  });
}
