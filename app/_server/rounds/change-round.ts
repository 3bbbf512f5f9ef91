import 'server-only';
import type { Check } from '#core/rounds/check';
import { type Entry, standingEntries } from '#core/rounds/entry';
import { checksOf } from '#core/rounds/sheet';
import { ok, type Result, refused } from '#core/result';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import type { RecordEntry } from '#data/records/seal';
import { listEntries } from '#data/rounds/entries';
import { findRound, type KeptRound } from '#data/rounds/round-row';
import { listSignatures, type Signature } from '#data/rounds/signatures';
import { holdSite, type SiteEntry } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import type { RoundAddress } from '#shape/rounds/requests';
import { now } from '../clock';
import type { Verb } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** A round as it stands while a transaction holds it. */
export interface HeldRound {
  tx: Transaction;
  site: SiteEntry;
  round: KeptRound;
  checks: Check[];
  entries: Entry[];
  standing: Map<string, Entry>;
  signatures: Signature[];
  at: Date;
}

/** What is done on a round answers: where it is. */
export type RoundChanged = Result<RoundAddress, Refusal>;

/**
 * Adds to a round. What is added and what the record gains are kept together or not at all; two who walk the same round
 * wait for one another.
 *
 * @param verb   what it takes to be allowed
 * @param work   adds to it; answers what the record gains
 */
export async function changeRound(
  who: Who,
  verb: Verb,
  address: RoundAddress,
  work: (held: HeldRound) => Promise<Result<RecordEntry[], Refusal>>,
): Promise<RoundChanged> {
  const found = await siteFor(who, verb, address.site);
  if (!found.ok) return found;
  const site = found.value;
  const at = now();
  return await inTransaction(async (tx) => {
    await holdSite(tx, site, at);
    const held = await hold(tx, site, address.round, at);
    if (!held) return refused({ why: 'not-found', what: 'round' });
    const done = await work(held);
    if (!done.ok) return done;
    if (done.value.length > 0) await appendRecords(tx, site.id, done.value, at);
    await news(tx, site.id, 'rounds');
    return ok({ site: site.key, round: held.round.id });
  });
}

/** A round as it stands, read in a transaction that holds its site. */
export async function hold(tx: Transaction, site: SiteEntry, id: string, at: Date): Promise<HeldRound | null> {
  const round = await findRound(site.id, id, tx);
  if (!round) return null;
  const entries = await listEntries(site.id, id, tx);
  const signatures = await listSignatures(site.id, id, tx);
  const checks = checksOf(round.sheet);
  return { tx, site, round, checks, entries, standing: standingEntries(entries), signatures, at };
}
