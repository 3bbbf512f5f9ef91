import 'server-only';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { ok, type Result, refused } from '#core/result';
import { hasDemoAccounts } from '#data/accounts/demo';
import { findSite, listDemoSites } from '#data/sites';
import { DEMO_FILES, type DemoFile, demoOn } from '../../../seed/demo';
import { type DemoSignIn, keepDemoPeople } from '../accounts/demo-people';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { keepDemoSite } from '../demo/keep-demo-site';
import { type MakePast, withPasts } from '../demo/past-apart';
import type { Imported } from './import-facility';
import { readFile as readFacilityFile } from './read-file';

/** Sites that are under way at once. */
const LANES = 2;

/** What became of the demonstration's sites. */
export interface DemoLoaded {
  stored: Imported[];
  /** Keys of those that were there already: whatever bears the key is left as it is. */
  left: string[];
  /** How its people sign in; none when they were there already, or a site of somebody's own bears every key. */
  people: DemoSignIn[];
}

/**
 * Stores the sites of the demonstration with their past, their dates moved to today. What is there already is
 * not touched, so that nobody's own site is replaced by one that happens to bear the same key. Each role gets somebody who may
 * sign in to look at it.
 */
export async function loadDemo(who: Who): Promise<Result<DemoLoaded, Refusal>> {
  if (DEMO_FILES.some(({ key }) => !may(who, 'import', key))) return refused({ why: 'not-allowed' });
  const held = await Promise.all(DEMO_FILES.map(async ({ key }) => (await findSite(key)) !== null));
  const loaded: DemoLoaded = { stored: [], left: keysOf(DEMO_FILES.filter((_, i) => held[i])), people: [] };
  const missing = DEMO_FILES.filter((_, i) => !held[i]);
  const kept = await keepAll(who, missing);
  for (const { key } of missing) {
    const outcome = kept.get(key);
    if (!outcome) continue;
    if (!outcome.ok) return outcome;
    loaded.stored.push(outcome.value);
  }
  if ((await listDemoSites()).length > 0 && !(await hasDemoAccounts())) loaded.people = await keepDemoPeople(who);
  return ok(loaded);
}

function keysOf(files: readonly DemoFile[]): string[] {
  return files.map(({ key }) => key);
}

/** Two are under way at a time, each with a thread that makes its past: the first has the longest. */
async function keepAll(who: Who, files: readonly DemoFile[]): Promise<ReadonlyMap<string, Result<Imported, Refusal>>> {
  const queue = [...files];
  const kept = new Map<string, Result<Imported, Refusal>>();
  const lane = async () =>
    await withPasts(async (pastOf) => {
      for (let file = queue.shift(); file; file = queue.shift()) kept.set(file.key, await keepDemo(who, file, pastOf));
    });
  await Promise.all(files.slice(0, LANES).map(lane));
  return kept;
}

async function keepDemo(who: Who, { path }: DemoFile, pastOf: MakePast): Promise<Result<Imported, Refusal>> {
  const text = await readFile(resolve(/* turbopackIgnore: true */ process.cwd(), path), 'utf8');
  const read = readFacilityFile(text);
  if (!read.ok) return read;
  const at = now();
  return await keepDemoSite(who, demoOn(read.value, dayIn(read.value.site.zone, at)), at, pastOf);
}
