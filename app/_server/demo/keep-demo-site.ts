import 'server-only';
import type { Facility } from '#core/facility/facility';
import { ok, type Result, refused } from '#core/result';
import { addDays } from '#core/time/add-days';
import { instantOf } from '#core/time/zone';
import { saveFacility } from '#data/facility/save-facility';
import { LOADED } from '#data/demo/going-on';
import { appendPast, appendRecords } from '#data/records/append-records';
import { countRevision, holdSite } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { asOf, withoutSheets } from '../../../seed/past/as-of';
import type { Past } from '../../../seed/past/past';
import { DAYS_BACK } from '../../../seed/past/span';
import { importEntries } from '../facility/import-entries';
import type { Imported } from '../facility/import-facility';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { askForReviews } from '../reviews/ask-for-reviews';
import { keepAlarms } from './keep-alarms';
import { keepChanges } from './keep-changes';
import { keepIncidents } from './keep-incidents';
import { keepPeople } from './keep-people';
import { keepReadings } from './keep-readings';
import { keepRounds } from './keep-rounds';
import { keepStates } from './keep-states';
import { keepWatched } from './keep-watched';
import { keepVersions } from './keep-versions';
import type { MakePast } from './past-apart';
import type { Telling, ToldEntry } from './told';

/** ms that keeping a site with all its past may take, on a slow machine. */
const PATIENCE_MS = 180_000;

/**
 * Stores a site of the demonstration with its past: it was begun two months ago, and what happened since stands where the
 * product itself would have put it. All or nothing.
 *
 * @param facility   the site as it is on the day it is shown
 * @param at         now
 * @param pastOf     makes its past
 */
export async function keepDemoSite(
  who: Who,
  facility: Facility,
  at: Date,
  pastOf: MakePast,
): Promise<Result<Imported, Refusal>> {
  const { zone, key, name } = facility.site;
  const today = dayIn(zone, at);
  const past = await pastOf(facility, today, at.getTime());
  return await inTransaction(
    async (tx) => {
      const begun = new Date(instantOf(zone, addDays(today, -DAYS_BACK - 1), '16:30'));
      const held = await holdSite(tx, { ...facility.site, isDemo: true }, begun);
      // Whoever stored a site of this key a moment ago keeps it.
      if (held.revision !== 0) return refused({ why: 'conflict', now: `${name} is there already.` });
      const telling = await begin(tx, who, held.id, past, begun);
      const began = await countRevision(tx, held.id);
      const revision = Math.max(began, await keepVersions(telling, who, dayIn(zone, begun)));
      await keepReadings(telling);
      await keepRounds(telling);
      await keepStates(telling);
      await keepChanges(telling);
      await keepWatched(telling);
      await keepAlarms(telling, revision);
      await keepIncidents(telling);
      await appendPast(
        tx,
        held.id,
        telling.told.sort((a, b) => a.at.getTime() - b.at.getTime()),
      );
      await appendRecords(tx, held.id, [{ kind: LOADED, body: { by: who.id } }], at);
      await askForReviews(tx, { id: held.id, zone }, at);
      return ok({ site: { key, name }, isNew: true, systems: facility.systems.length, changes: 0, revision });
    },
    'ReadCommitted',
    PATIENCE_MS,
  );
}

/** Stores the site as it was described when it was begun, and lets in the people of its rota. */
async function begin(tx: Transaction, who: Who, siteId: string, past: Past, begun: Date): Promise<Telling> {
  const { facility } = past;
  const then = withoutSheets(asOf(facility, dayIn(facility.site.zone, begun), past.losses));
  const saved = await saveFacility(tx, siteId, then, { by: who.id, reason: 'import' }, begun);
  const told: ToldEntry[] = importEntries(who, then, saved, { revision: 1, changes: 0 }).map((entry) => ({
    ...entry,
    at: begun,
  }));
  const idOf = (table: string, system: string | null, key: string) => saved.idOf(table as 'person', system, key);
  const rota = { by: who.id, at: begun, told, idOf: (key: string) => idOf('person', null, key) };
  const accounts = await keepPeople(tx, siteId, facility, rota);
  const accountOf = (person: string) => accounts.get(person) ?? 'local';
  return { tx, siteId, past, idOf, accountOf, told };
}
