// @ts-check
// The tables, brought up to what this copy of the code knows, and never down.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import pg from 'pg';
import { prismaCommand } from '../engine/command.mjs';
import { settingsFor } from '../engine/connection.mjs';
import { Refusal } from './refusal.mjs';

/** @typedef {{ name: string, isFinished: boolean }} Applied */

const FOLDER = new URL('../migrations/', import.meta.url);

/**
 * @param {string} url address of the database
 * @returns {Promise<number>} how many migrations were applied; with none to apply, Prisma is not even started
 * @throws {Refusal} when the database is ahead of the code, or a migration fails
 */
export async function migrate(url) {
  const known = knownMigrations();
  const applied = await appliedMigrations(url);
  const refusal = migrationRefusal(known, applied);
  if (refusal) throw new Refusal(refusal);
  const missing = known.length - applied.length;
  if (missing > 0) deploy(url);
  return missing;
}

/**
 * @param {string[]} known names of the migrations this code has
 * @param {Applied[]} applied what the database has seen
 * @returns {string | undefined} the sentence when the two cannot go together
 */
function migrationRefusal(known, applied) {
  const unknown = applied.find(({ name }) => !known.includes(name));
  if (unknown) {
    return (
      `The database was last used by a newer Holdfast: it has the migration ${unknown.name}, which this copy does ` +
      'not know. Update this copy, or use another database.'
    );
  }
  const broken = applied.find(({ isFinished }) => !isFinished);
  if (broken) {
    return (
      `The migration ${broken.name} was broken off half-way: see what it left, then run ` +
      `node prisma/engine/run.mjs migrate resolve --rolled-back ${broken.name}, and start again.`
    );
  }
  return undefined;
}

/** @returns {string[]} names of the migrations this code has */
function knownMigrations() {
  const entries = readdirSync(FOLDER, { withFileTypes: true });
  return entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
}

/**
 * @param {string} url address of the database
 * @returns {Promise<Applied[]>} the migrations it has seen and that were not rolled back; none in a new database
 */
async function appliedMigrations(url) {
  const client = new pg.Client(settingsFor(url).client);
  await client.connect();
  try {
    const { rows } = await client.query(
      `SELECT migration_name AS name, finished_at IS NOT NULL AS "isFinished"
         FROM _prisma_migrations WHERE rolled_back_at IS NULL`,
    );
    return rows;
  } catch (error) {
    const isNew = /** @type {{ code?: string }} */ (error).code === '42P01';
    if (isNew) return [];
    throw error;
  } finally {
    await client.end();
  }
}

/**
 * @param {string} url address of the database
 * @throws {Refusal} when Prisma could not apply what is missing; its own words come first
 */
function deploy(url) {
  const { file, args, env } = prismaCommand(['migrate', 'deploy'], { ...process.env, DATABASE_URL: url });
  const { status, stdout, stderr } = spawnSync(file, args, { env, encoding: 'utf8' });
  if (status === 0) return;
  throw new Refusal(`${stdout}${stderr}\nThe database could not be brought up to date: the reason is above.`);
}
