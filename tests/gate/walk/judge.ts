import { may } from '#server/gate/may';
import { askEntry, type Told, underWay } from './ask-entry';
import type { Caller } from './callers';
import type { Entry } from './entries';
import type { Given, Line, Maker, WalkSite } from './line';

/** Where the walk takes place. */
export interface Ground {
  /** The site that is asked about. */
  here: WalkSite;
  /** The one whose administrator is a stranger here. */
  other: WalkSite;
  callers: Caller[];
  make: Maker;
  /** What stands in the tables. */
  print: () => Promise<Record<string, string>>;
}

/** A key that no site has. */
const ABSENT: WalkSite = { key: 'nowhere', marker: 'Nowhere at all' };

/**
 * Asks an entry as everybody who may ask, and holds what came of it to its line.
 *
 * @returns   what is wrong, a sentence each; nothing when all is as it should be
 */
export async function judge(entry: Entry, line: Line, ground: Ground): Promise<string[]> {
  const mayChange = (caller: Caller) =>
    entry.kind === 'action' && !('open' in line) && refusal(line, caller, ground.here) === null;
  const callers = ground.callers.filter(
    ({ is, isMisnamed }) => !('open' in line) || !(isMisnamed || (line.only && is !== line.only)),
  );
  const [changing, looking] = [callers.filter(mayChange), callers.filter((caller) => !mayChange(caller))];
  const given = await givenFor(line, ground.here, ground.make);
  const before = await ground.print();
  const wrong: string[] = [];
  // What is refused changes nothing, and neither does what is asked for by an address, whoever asks.
  for (const caller of looking) {
    const same = 'open' in line ? await givenFor(line, ground.here, ground.make) : given;
    wrong.push(...(await askAs(caller, { entry, line, ground, given: same })));
  }
  wrong.push(...(await strangerSeesNothing(entry, line, ground, given)));
  const leaves = 'open' in line ? (line.leaves ?? []) : [];
  wrong.push(...changed(before, await ground.print(), leaves));
  for (const caller of changing) {
    const own = await givenFor(line, ground.here, ground.make);
    wrong.push(...(await askAs(caller, { entry, line, ground, given: own })));
  }
  return wrong;
}

interface Asked {
  entry: Entry;
  line: Line;
  ground: Ground;
  given: Given;
}

async function askAs(caller: Caller, { entry, line, ground, given }: Asked): Promise<string[]> {
  const { outcome, text } = await tell(caller, entry, given);
  const hoped = expected(line, caller, ground.here);
  const said = outcome === 'done' ? '' : ` (${text.slice(0, 200)})`;
  const wrong = outcome === hoped ? [] : [`${caller.name}: ${outcome} instead of ${hoped}${said}`];
  const { here, other } = ground;
  const mayKnow = { here: maySee(caller, here, ground), other: maySee(caller, other, ground) };
  if (!mayKnow.here && text.includes(here.marker)) wrong.push(`${caller.name} is told of ${here.marker}`);
  if (!mayKnow.other && text.includes(other.marker)) wrong.push(`${caller.name} is told of ${other.marker}`);
  return wrong;
}

async function tell(caller: Caller, entry: Entry, given: Given): Promise<Told> {
  underWay.headers = caller.headers;
  return await askEntry(entry, given);
}

function maySee({ role, everywhere, is }: Caller, site: WalkSite, { here }: Ground): boolean {
  if (is === 'stranger') return site.key !== here.key;
  return role !== undefined && (everywhere === true || site.key === here.key);
}

/** What comes of it for a caller, as the line and the table of who may do what have it. */
function expected(line: Line, caller: Caller, here: WalkSite): string {
  return refusal(line, caller, here) ?? line.comes ?? 'done';
}

/** Why a caller is refused; null when they may. */
function refusal(line: Line, { role, everywhere, is }: Caller, here: WalkSite): string | null {
  if ('open' in line) return null;
  if (is === 'unknown') return 'not-signed-in';
  if ('own' in line) return null;
  if (line.everywhere && !everywhere) return line.refused ?? 'not-allowed';
  if (is === 'stranger') return line.stranger ?? 'not-found';
  const everywhereRole = everywhere ? (role ?? null) : null;
  const who = { id: '', name: '', everywhere: everywhereRole, at: everywhere || !role ? {} : { [here.key]: role } };
  return may(who, line.verb, here.key) ? null : (line.refused ?? 'not-allowed');
}

/** To a stranger a site that is there looks like one that is not. */
async function strangerSeesNothing(entry: Entry, line: Line, ground: Ground, given: Given): Promise<string[]> {
  if (!('verb' in line)) return [];
  const caller = ground.callers.find(({ is }) => is === 'stranger');
  if (!caller) throw new Error('The walk needs a stranger.');
  const there = await tell(caller, entry, given);
  const absent = await tell(caller, entry, at(given, ground.here, ABSENT));
  const same = JSON.stringify(there).replaceAll(ground.here.key, '').replaceAll(ground.here.marker, '');
  const bare = JSON.stringify(absent).replaceAll(ABSENT.key, '').replaceAll(ABSENT.marker, '');
  return same === bare ? [] : [`a stranger tells a site that is there from one that is not: ${same} and ${bare}`];
}

/** The same, asked of another site. */
function at(given: Given, from: WalkSite, to: WalkSite): Given {
  const said = JSON.stringify(given).replaceAll(from.key, to.key).replaceAll(from.marker, to.marker);
  const told = JSON.parse(said) as Given;
  // A chosen file names no site, and is no text.
  const files = Object.entries(given.form ?? {}).filter(([, value]) => value instanceof File);
  return files.length > 0 ? { ...told, form: { ...told.form, ...Object.fromEntries(files) } } : told;
}

async function givenFor(line: Line, site: WalkSite, make: Maker): Promise<Given> {
  const { params, search, form, body } = (await line.given?.(site, make)) ?? {};
  const sent = body === undefined ? {} : { body };
  return { params: { site: site.key, ...params }, search: { ...search }, form: { site: site.key, ...form }, ...sent };
}

function changed(before: Record<string, string>, after: Record<string, string>, leaves: string[]): string[] {
  const tables = Object.keys(after).filter((table) => before[table] !== after[table] && !leaves.includes(table));
  return tables.map((table) => `${table} was changed: ${before[table]} became ${after[table]}`);
}
