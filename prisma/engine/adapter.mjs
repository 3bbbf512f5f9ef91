// @ts-check
// How the engine reaches PostgreSQL: Prisma's own adapter over `pg`, with three habits changed.
import { randomUUID } from 'node:crypto';
import { PrismaPg } from '@prisma/adapter-pg';
import { DriverAdapterError } from '@prisma/driver-adapter-utils';
import pg from 'pg';
import { asCharacters } from './catalogue-types.mjs';
import { settingsFor, withDatabase } from './connection.mjs';

/**
 * A factory of connections for the engine.
 *
 * - A migration goes out whole. The adapter would cut it at every `;` and run the pieces one by one: not atomic, and it
 *   would cut function bodies. Sent whole, PostgreSQL runs it as one transaction.
 * - Columns of type `"char"` arrive as characters.
 * - The shadow database is dropped even when the engine left a connection open in it.
 *
 * @param {string} url address of the database
 * @returns {PrismaPg} the factory
 */
export function adapterFor(url) {
  const { client, schema } = settingsFor(url);
  const factory = new PrismaPg({ ...client, max: 1 }, { schema });
  const connect = factory.connect.bind(factory);
  factory.connect = async () => asMigrationsNeed(await connect());
  factory.connectToShadowDb = () => connectToShadow(url);
  return factory;
}

/**
 * @param {string} url address of the database the shadow stands beside
 * @returns {Promise<Adapter>} a connection to an empty database that vanishes when it is disposed of
 */
async function connectToShadow(url) {
  const name = `holdfast_shadow_${randomUUID()}`;
  const admin = new pg.Client(settingsFor(url).client);
  await admin.connect();
  await admin.query(`CREATE DATABASE ${pg.escapeIdentifier(name)}`);
  const { client, schema } = settingsFor(withDatabase(url, name));
  const shadow = asMigrationsNeed(await new PrismaPg({ ...client, max: 1 }, { schema }).connect());
  const dispose = shadow.dispose.bind(shadow);
  shadow.dispose = async () => {
    await dispose();
    await admin.query(`DROP DATABASE IF EXISTS ${pg.escapeIdentifier(name)} WITH (FORCE)`);
    await admin.end();
  };
  return shadow;
}

/** @typedef {Awaited<ReturnType<PrismaPg['connect']>>} Adapter */

/**
 * @param {Adapter} adapter a connection as Prisma makes it
 * @returns {Adapter} the same connection with the habits of {@link adapterFor}
 */
function asMigrationsNeed(adapter) {
  const queryRaw = adapter.queryRaw.bind(adapter);
  adapter.executeScript = async (script) => {
    try {
      await adapter.underlyingDriver().query(script);
    } catch (error) {
      throw inPrismasWords(/** @type {pg.DatabaseError} */ (error));
    }
  };
  adapter.queryRaw = async (query) => {
    const answer = await queryRaw(query);
    return { ...answer, columnTypes: /** @type {typeof answer.columnTypes} */ (asCharacters(answer.columnTypes)) };
  };
  return adapter;
}

/**
 * An error in any other form reaches the person as "external error 0", without PostgreSQL's own words.
 *
 * @param {pg.DatabaseError} error of PostgreSQL
 * @returns {DriverAdapterError} the same, as the engine understands it
 */
function inPrismasWords({ code = 'N/A', severity = 'ERROR', message, detail, column, hint }) {
  const said = { kind: /** @type {const} */ ('postgres'), code, severity, message, detail, column, hint };
  return new DriverAdapterError({ ...said, originalCode: code, originalMessage: message });
}
