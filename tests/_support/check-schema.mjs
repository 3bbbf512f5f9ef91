// @ts-check
// Do the migrations, the schema and a migrated database say the same? Run by `npm test`, with the server in
// HOLDFAST_TEST_SERVER.
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { compare } from '../../prisma/engine/difference.mjs';
import { TEMPLATE } from './template-name.mjs';

const server = process.env.HOLDFAST_TEST_SERVER ?? '';
const name = `holdfast_${randomUUID().replaceAll('-', '')}`;
const address = new URL(server);
address.pathname = `/${name}`;
const env = { ...process.env, DATABASE_URL: address.href };
const SCHEMA = ['--to-schema', 'prisma/schema.prisma'];

const client = new pg.Client({ connectionString: server });
await client.connect();
await client.query(`CREATE DATABASE ${name} TEMPLATE ${TEMPLATE}`);
try {
  say('migrations and schema', compare(['--from-migrations', 'prisma/migrations', ...SCHEMA], env));
  say('database and schema', compare(['--from-config-datasource', ...SCHEMA], env));
} finally {
  await client.query(`DROP DATABASE ${name} WITH (FORCE)`);
  await client.end();
}

/**
 * @param {string} sides that were compared
 * @param {import('../../prisma/engine/difference.mjs').Verdict} verdict what came of it
 */
function say(sides, { same, why }) {
  console.log(`${sides}: ${why}`);
  if (!same) process.exitCode = 1;
}
