import 'server-only';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { ok, type Result, refused } from '#core/result';
import { hasDemoAccounts } from '#data/accounts/demo';
import { findSite, listDemoSites } from '#data/sites';
import { DEMO_FILES, demoOn } from '../../../seed/demo';
import { type DemoSignIn, keepDemoPeople } from '../accounts/demo-people';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { keepDemoSite } from '../demo/keep-demo-site';
import type { Imported } from './import-facility';
import { readFile as readFacilityFile } from './read-file';

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
  const loaded: DemoLoaded = { stored: [], left: [], people: [] };
  for (const { key, path } of DEMO_FILES) {
    if (!may(who, 'import', key)) return refused({ why: 'not-allowed' });
    if (await findSite(key)) {
      loaded.left.push(key);
      continue;
    }
    const kept = await keepDemo(who, path);
    if (!kept.ok) return kept;
    loaded.stored.push(kept.value);
  }
  if ((await listDemoSites()).length > 0 && !(await hasDemoAccounts())) loaded.people = await keepDemoPeople(who);
  return ok(loaded);
}

async function keepDemo(who: Who, path: string): Promise<Result<Imported, Refusal>> {
  const text = await readFile(resolve(/* turbopackIgnore: true */ process.cwd(), path), 'utf8');
  const read = readFacilityFile(text);
  if (!read.ok) return read;
  const at = now();
  return await keepDemoSite(who, demoOn(read.value, dayIn(read.value.site.zone, at)), at);
}
