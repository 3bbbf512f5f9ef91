import 'server-only';
import type { Facility } from '#core/facility/facility';
import { instantOf } from '#core/time/zone';
import { saveFacility } from '#data/facility/save-facility';
import { countRevision } from '#data/sites';
import { asOf, offAfter, withoutSheets } from '../../../seed/past/as-of';
import { onShift } from '../../../seed/past/on-shift';
import { offEntries } from '../facility/off-entries';
import type { Who } from '../gate/who';
import { keepTests } from './keep-tests';
import { type Telling, tell } from './told';

/** When on its day a change of the description is kept. */
const KEPT_AT = '16:45';

/**
 * Brings a description from what it was when the site was begun to what it is today: tests are written down on their days,
 * what was lost is taken off the count, and what is out of service was taken out.
 *
 * @param since   ISO date on which it was begun
 * @returns       revision of the site
 */
export async function keepVersions(telling: Telling, who: Who, since: string): Promise<number> {
  const { past } = telling;
  const { facility, losses } = past;
  const off = offAfter(facility, since);
  const days = [...new Set([...losses.map(({ on }) => on), ...(off === null ? [] : [off])])].sort();
  let revision = 1;
  let before = { day: since, facility: withoutSheets(asOf(facility, since, losses)) };
  for (const day of days) {
    await keepTests(telling, before.day, day);
    const after = withoutSheets(asOf(facility, day, losses));
    revision = await keepVersion(telling, who, { before: before.facility, after, day });
    before = { day, facility: after };
  }
  await keepTests(telling, before.day, past.today);
  return facility.sheets ? await keepSheets(telling, who) : revision;
}

/** Puts the sheets of a site into force, now: what was due before was due by the timetable alone. @returns its revision */
async function keepSheets({ tx, siteId, past, told }: Telling, who: Who): Promise<number> {
  const at = new Date(past.untilMs);
  const saved = await saveFacility(tx, siteId, past.facility, { by: who.id, reason: 'change' }, at);
  for (const { key } of past.facility.sheets ?? []) {
    const body = { by: who.id, sheet: saved.idOf('round_sheet', null, key), version: 1 };
    told.push({ kind: 'sheet-in-force', body, at });
  }
  return await countRevision(tx, siteId);
}

async function keepVersion(
  telling: Telling,
  who: Who,
  { before, after, day }: { before: Facility; after: Facility; day: string },
): Promise<number> {
  const { tx, siteId, past, told } = telling;
  const { zone } = past.facility.site;
  const atMs = Math.min(instantOf(zone, day, KEPT_AT), past.untilMs);
  const by = telling.accountOf(onShift(past.facility, atMs, day));
  const saved = await saveFacility(tx, siteId, after, { by, reason: 'change' }, new Date(atMs));
  const revision = await countRevision(tx, siteId);
  for (const { system, stock, was, on } of past.losses.filter((loss) => loss.on === day)) {
    const thing = saved.idOf('stock', system, stock);
    const now = after.systems.find(({ key }) => key === system)?.stock.find(({ key }) => key === stock)?.count;
    const body = { by, act: 'change', noun: 'stock', thing, system, key: stock, why: 'Lost', on, revision };
    tell(telling, atMs, 'description-changed', { ...body, changes: [`count: ${was} → ${String(now)}`] });
  }
  const change = { before, after, idOf: saved.idOf };
  for (const entry of await offEntries(tx, { ...who, id: by }, siteId, change))
    told.push({ ...entry, at: new Date(atMs) });
  return revision;
}
