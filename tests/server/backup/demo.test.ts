import { join } from 'node:path';
import { restoreBackup } from '#server/backup/restore-backup';
import { writeBackup } from '#server/backup/write-backup';
import { goOn } from '#server/demo/go-on';
import { keepDemoSite } from '#server/demo/keep-demo-site';
import { withPasts } from '#server/demo/past-apart';
import { LOCAL_PERSON } from '#server/gate/who';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../app/_start/places.mjs';
import { demoOn } from '../../../seed/demo';
import { type Copy, emptyDatabase, freshDatabase } from '../../_support/database';
import { runProgram } from '../../_support/run-program';
import { everyRow } from '../../_support/same-rows';
import { temporaryFolder } from '../../_support/temporary-folder';
import { demoSite } from '../../seed/demo-site';

const { query } = freshDatabase();
const LOADED = new Date('2026-11-24T14:07:31Z');
const file = join(temporaryFolder(), 'demo.backup');
let copy: Copy;

beforeAll(async () => {
  await withPasts((pastOf) => keepDemoSite(LOCAL_PERSON, demoOn(demoSite('mill-lane'), '2026-11-24'), LOADED, pastOf));
  for (let minute = 1; minute <= 12; minute++) await goOn(new Date(LOADED.getTime() + minute * 60_000));
  await writeBackup(file, new Date());
  copy = await emptyDatabase();
}, 300_000);
afterAll(async () => {
  await copy?.drop();
});

describe('a backup of a demonstration that goes on', () => {
  test('comes back row for row, arrivals that nobody judged among them, and its record is whole', async () => {
    const into = { path: file, url: copy.url, migrations: join(ROOT, 'prisma/migrations'), takeBroken: false };
    expect(await restoreBackup(into)).toMatchObject({ sites: 1, broken: [] });
    const rows = await everyRow(query);
    for (const table of ['round_entry', 'incident_entry', 'alarm_event', 'reading_arrival', 'reading_latest'])
      expect(rows[table]?.length, table).toBeGreaterThan(0);
    expect(rows.reading?.length).toBeGreaterThan(30_000);
    expect(await everyRow(copy.query)).toEqual(rows);
  });

  test('is found whole by the audit where it was restored', async () => {
    const args = ['--conditions=react-server', '--import', 'tsx', 'app/_server/command/audit.ts'];
    const audited = await runProgram(args, { DATABASE_URL: copy.url });
    expect(audited).toMatchObject({ code: 0 });
    expect(audited.stdout).toContain('whole');
  });
});
