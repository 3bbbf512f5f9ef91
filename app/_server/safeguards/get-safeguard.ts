import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { QuietSpan } from '#core/plans/quiet-at';
import { isLoud, quietSpans } from '#core/plans/quiet-hours';
import { addDays } from '#core/time/add-days';
import { ok, refused, type Result } from '#core/result';
import { accountNames, LOCAL } from '#data/accounts/names';
import { newId } from '#data/new-id';
import { type LedgerEntry, ledgerOf } from '#data/safeguards/ledger';
import { findSafeguard } from '#data/safeguards/safeguard-row';
import { inTransaction } from '#data/transaction';
import { SITE_ITSELF, type SafeguardPlace, safeguardPlace } from '#shape/safeguards/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { lineOf, type SafeguardLine } from './list-safeguards';

/** A test in the ledger, with the names of those who recorded and withdrew it. */
export type ToldTest = Omit<LedgerEntry, 'recordedAt' | 'withdrawn'> & {
  recordedAt: string;
  withdrawn: { at: string; by: string | null; reason: string | null } | null;
};

/** One safeguard with its ledger, and what the person who asks may do with it. */
export interface SafeguardPage {
  site: { key: string; name: string; zone: string };
  place: SafeguardPlace;
  /** ISO date at the site. */
  today: string;
  line: SafeguardLine;
  ledger: ToldTest[];
  mayTest: boolean;
  maySwitch: boolean;
  /** Name of the person who asks; null at the machine itself, which nobody has signed in at. */
  self: string | null;
  /** Id for the next test that is recorded. */
  nextEntry: string;
  /** Quiet hours of these days, where its test is loud. */
  quiet: QuietSpan[];
}

export const getSafeguardShape = safeguardPlace;

/** A safeguard of a site or a system by its key. What a person may not see is not found. */
export async function getSafeguard(who: Who, place: SafeguardPlace): Promise<Result<SafeguardPage, Refusal>> {
  const at = await findStoredSite(who, 'see', place.site);
  if (!at.ok) return at;
  const { entry: site, stored, today } = at.value;
  const { reviewed: facility } = stored;
  const ownKey = place.system === SITE_ITSELF ? null : place.system;
  const system = facility.systems.find(({ key }) => key === ownKey) ?? null;
  if (ownKey !== null && !system) return refused({ why: 'not-found', what: 'system' });
  const found = (system ?? facility).safeguards.find(({ key }) => key === place.safeguard);
  const row = found && (await inTransaction((tx) => findSafeguard(tx, site.id, ownKey, found.key)));
  if (!found || !row) return refused({ why: 'not-found', what: 'safeguard' });
  const ledger = await ledgerOf(site.id, row.id);
  const names = await accountNames(ledger.flatMap(recorders));
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    place,
    today,
    line: lineOf(system && { key: system.key, name: system.name }, found, today),
    ledger: ledger.map((test) => told(test, names)),
    mayTest: may(who, 'test-safeguard', site.key),
    maySwitch: may(who, 'switch-safeguard', site.key),
    self: who.id === LOCAL ? null : who.name,
    nextEntry: newId(),
    quiet: isLoud(facility.site, found, ownKey) ? quietAhead(facility.site, today) : [],
  });
}

/** The quiet hours of today and of the night after it, those left out that are over. */
function quietAhead(site: Facility['site'], today: string): QuietSpan[] {
  const at = now().getTime();
  return quietSpans(site, today, addDays(today, 1)).filter(({ to }) => to > at);
}

function recorders({ recordedBy, withdrawn }: LedgerEntry): string[] {
  return [recordedBy, withdrawn?.by].filter((id) => typeof id === 'string');
}

function told(test: LedgerEntry, names: ReadonlyMap<string, string>): ToldTest {
  const nameOf = (id: string | null) => (id === null ? null : (names.get(id) ?? id));
  return {
    ...test,
    recordedAt: test.recordedAt.toISOString(),
    recordedBy: nameOf(test.recordedBy),
    withdrawn: test.withdrawn && {
      at: test.withdrawn.at.toISOString(),
      by: nameOf(test.withdrawn.by),
      reason: test.withdrawn.reason,
    },
  };
}
