import { setTimeout as wait } from 'node:timers/promises';
import { appendRecords } from '#data/records/append-records';
import { findSite } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { importFacility } from '#server/facility/import-facility';
import { LOCAL_PERSON } from '#server/gate/who';
import { writeFacility } from '#shape/facility/write-facility';
import { site } from '../_support/build-facility';
import { smallFacility } from '../_support/small-facility';

// Writes all the time: `node --conditions=react-server --import tsx tests/drill/writer.ts NAME FIRST`. Says a line for every
// write once it was answered as stored, so that whoever listens holds it outside the database:
//   entry N       entry N of this writer stands in the record
//   import N      the site was described anew, at an altitude of N metres
// A write that was not answered is not tried again under its number.

const [name = 'writer', first = '1'] = process.argv.slice(2);
/** Every so many entries the site is described anew. */
const IMPORT_EVERY = 5;
/** m */
const HIGHEST_M = 3001;
/** ms after a write that failed. */
const PAUSE_MS = 20;

const say = (line: string) => process.stdout.write(`${line}\n`);
/** Another description each time, at an altitude there is. */
const facilityAt = (n: number) => ({ ...smallFacility(), site: site({ key: name, name, altitudeM: n % HIGHEST_M }) });

async function describeSite(n: number): Promise<void> {
  const imported = await importFacility(LOCAL_PERSON, { text: writeFacility(facilityAt(n)) });
  if (!imported.ok) throw new Error(JSON.stringify(imported.reason));
  say(`import ${n}`);
}

async function enter(n: number): Promise<void> {
  const entry = await findSite(name);
  if (!entry) throw new Error('there is no site yet');
  const entries = [{ kind: 'drill-entry', body: { writer: name, n } }];
  await inTransaction((tx) => appendRecords(tx, entry.id, entries, new Date()));
  say(`entry ${n}`);
}

for (let n = Number(first); ; n++) {
  try {
    if ((n - Number(first)) % IMPORT_EVERY === 0) await describeSite(n);
    await enter(n);
  } catch (error) {
    say(`failed ${n} ${String(error).replaceAll(/\s+/g, ' ').slice(0, 200)}`);
    await wait(PAUSE_MS);
  }
}
