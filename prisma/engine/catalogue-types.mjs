// @ts-check
// The engine asks PostgreSQL's catalogue in types that Prisma's adapter does not know, and in one way that PostgreSQL 18
// answers differently. Both are put right here, on the way in and out of `pg`, in this process alone.
import { createRequire } from 'node:module';
import { ColumnTypeEnum } from '@prisma/driver-adapter-utils';
import pg from 'pg';

/** PostgreSQL's type `"char"`, one byte, as pg_constraint.contype has. */
const CHAR = 18;

/** Catalogue type → the nearest one the adapter knows: `"char"` as bpchar, node trees and regclass as text, arrays alike. */
const KNOWN_AS = new Map([
  [CHAR, 1042],
  [194, 25],
  [2205, 25],
  [1002, 1009],
  [1003, 1009],
]);

/** Which columns of the latest answer were `"char"`; the engine runs one query at a time, so one memory is enough. */
let charColumns = /** @type {boolean[]} */ ([]);

/** Makes `pg` announce catalogue types by names the adapter understands. Called once, before the first query. */
export function announceKnownTypes() {
  const { prototype } = createRequire(import.meta.url)('pg/lib/result.js');
  const addFields = prototype.addFields;
  prototype.addFields = function (/** @type {{ dataTypeID: number }[]} */ fields) {
    charColumns = fields.map((field) => field.dataTypeID === CHAR);
    for (const field of fields) field.dataTypeID = KNOWN_AS.get(field.dataTypeID) ?? field.dataTypeID;
    return addFields.call(this, fields);
  };
}

/**
 * Marks the `"char"` columns of the latest answer as single characters: as text the engine panics on the first CHECK or
 * EXCLUDE constraint it meets.
 *
 * @param {number[]} columnTypes the adapter's types, column by column
 * @returns {number[]} the same with characters where they belong
 */
export function asCharacters(columnTypes) {
  return columnTypes.map((type, column) => (charColumns[column] ? ColumnTypeEnum.Character : type));
}

/**
 * PostgreSQL 18 lists NOT NULL among the constraints, which the engine's question does not expect and panics on
 * (prisma/orm issue 29635). The embedded server is a 17; this serves those who bring their own 18.
 */
export function leaveNotNullOut() {
  const asked = "contype NOT IN ('p', 'u', 'f')";
  const meant = "contype NOT IN ('p', 'u', 'f', 'n')";
  const prototype = /** @type {{ query: Function }} */ (pg.Client.prototype);
  const query = prototype.query;
  prototype.query = function (/** @type {{ text?: string } | undefined} */ config, /** @type {unknown[]} */ ...rest) {
    const question = config?.text?.includes(asked) ? { ...config, text: config.text.replace(asked, meant) } : config;
    return query.call(this, question, ...rest);
  };
}
