// @ts-check
// One migrated database that every test file copies. Nobody can be connected to it, as copying demands.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { generateClient } from '../../app/_start/generate.mjs';
import { ROOT } from '../../app/_start/places.mjs';
import { asProcess, TEMPLATE } from './template-name.mjs';

/**
 * @param {string} server address of the server's maintenance database
 * @throws {Error} with the reason when a migration fails
 */
export async function makeTemplate(server) {
  await generateClient(ROOT, process.env);
  const address = new URL(server);
  address.pathname = `/${TEMPLATE}`;
  const { status, stderr } = spawnSync(process.execPath, [join(ROOT, 'prisma/prepare/prepare.mjs'), '--own'], {
    cwd: ROOT,
    env: { ...process.env, DATABASE_URL: asProcess(address.href), DATABASE_OWNER_URL: address.href },
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(stderr);
  // Loaded only now: the runner reads this file before the packages are installed.
  const { default: pg } = await import('pg');
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  await client.query(`ALTER DATABASE ${TEMPLATE} IS_TEMPLATE true ALLOW_CONNECTIONS false`);
  await client.end();
}
