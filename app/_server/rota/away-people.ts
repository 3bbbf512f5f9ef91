import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type AwayTurn, awayWeek } from '#core/rota/away';
import { shiftsInForce } from '#core/rota/in-force';
import type { Away } from '#core/rota/rota';
import { type Rota, turnsOf } from '#core/rota/turns';
import { groupBy } from '#core/group-by';
import { addDays } from '#core/time/add-days';
import { mondayOf } from '#core/time/monday-of';
import { dayStart } from '#core/time/zone';
import { loadFacility } from '#data/facility/load-facility';
import { findElsewhere } from '#data/rota/elsewhere';
import { findSiteById, type SiteEntry } from '#data/sites';
import { rotaOf } from './rota-of';

type Duties = Pick<Facility, 'site' | 'people' | 'shifts'>;

/** Somebody of a site who stands in the rota of another to which the way is known. */
interface Link {
  person: string;
  there: string;
  other: SiteEntry;
  duties: Duties;
  wayS: number;
}

/** Duties of other sites kept in memory, by id. */
const kept = new Map<string, { revision: number; duties: Duties }>();
const MOST = 50;

/**
 * When the people of a site are on site at another one in the usual week, by key of the person; nobody where no way to another
 * site is entered, and nothing is asked of the database then.
 *
 * @param on   ISO date at the site
 */
export async function awayUsually(
  siteId: string,
  { site }: Facility,
  on: string,
): Promise<ReadonlyMap<string, Away[]>> {
  if (!site.waysTo) return new Map();
  const monday = mondayOf(on);
  const [from, to] = [dayStart(site.zone, monday), dayStart(site.zone, addDays(monday, 7))];
  const turns = (await linksOf(siteId, site)).flatMap((link) =>
    turnsAt(link, { ...shiftsInForce(link.duties, on), exceptions: [] }, from, to),
  );
  const week = turns.filter(({ start }) => start >= from && start < to);
  return new Map([...groupBy(week, ({ person }) => person)].map(([key, own]) => [key, awayWeek(site.zone, own)]));
}

/** When they are really on site there within a stretch of time, ms: swaps and leave counted in. */
export async function awayReally(siteId: string, { site }: Facility, from: number, to: number): Promise<AwayTurn[]> {
  const links = await linksOf(siteId, site);
  const all = links.map(async (link) => {
    const { exceptions } = await rotaOf(link.other.id, link.duties, from);
    return turnsAt(link, { ...link.duties, exceptions }, from, to);
  });
  return (await Promise.all(all)).flat();
}

function turnsAt({ person, there, wayS }: Link, rota: Rota, from: number, to: number): AwayTurn[] {
  return turnsOf(rota, from, to)
    .filter((turn) => turn.person === there && turn.kind === 'on-site')
    .map(({ start, end }) => ({ person, start, end, wayS }));
}

async function linksOf(siteId: string, { waysTo }: Facility['site']): Promise<Link[]> {
  if (!waysTo) return [];
  const links: Link[] = [];
  for (const { person, siteId: id, there } of await findElsewhere(siteId)) {
    const other = await findSiteById(id);
    const way = waysTo.find(({ site }) => site === other?.key);
    const duties = other && way && (await dutiesAt(other));
    if (other && way && duties) links.push({ person, there, other, duties, wayS: way.min * 60 });
  }
  return links;
}

async function dutiesAt({ id, revision }: SiteEntry): Promise<Duties | null> {
  const known = kept.get(id);
  if (known?.revision === revision) return known.duties;
  const loaded = await loadFacility(id);
  if (!loaded) return null;
  const { site, people, shifts } = loaded.facility;
  const duties = { site, people, shifts };
  kept.delete(id);
  kept.set(id, { revision: loaded.revision, duties });
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return duties;
}
