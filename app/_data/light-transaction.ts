import 'server-only';
import { createHash } from 'node:crypto';
import type pg from 'pg';
import { Prisma } from '../../prisma/generated/client';
import { inPlainTransaction } from './readings/asking';
import { inTransaction, type Transaction } from './transaction';

/** That the work wants more of the transaction than SQL. */
class ModelWanted extends Error {}

/**
 * Runs the work in one transaction, as `inTransaction` does, but by the driver itself as long as it asks in SQL alone, which
 * costs less than half. Where it comes to ask for a model, what was done is undone and all of it is done through Prisma. It is
 * for work that is done many times a second and nearly always finds that nothing has happened.
 *
 * @param work   what to do; given the transaction, called again after a clash or from the start. Its rows are those of the
 *               driver: instants are `Date`s, whole numbers of 64 bits have to be cast
 * @returns      what the work returned
 * @throws       what the work threw, or the clash itself after six tries
 */
export async function inLightTransaction<T>(work: (transaction: Transaction) => Promise<T>): Promise<T> {
  try {
    return await inPlainTransaction(async (_asking, client) => await work(inSqlAlone(client)));
  } catch (error) {
    if (!(error instanceof ModelWanted)) throw error;
  }
  return await inTransaction(work);
}

function inSqlAlone(client: pg.ClientBase): Transaction {
  const ask = async (strings: TemplateStringsArray, values: unknown[]) => {
    // What is put together of pieces is no one statement that can stay prepared.
    if (!Array.isArray(strings) || values.some((value) => value instanceof Prisma.Sql))
      throw new ModelWanted('pieces of SQL');
    return await client.query({ ...statementOf(strings), values });
  };
  const raw = {
    $queryRaw: async (strings: TemplateStringsArray, ...values: unknown[]) => (await ask(strings, values)).rows,
    $executeRaw: async (strings: TemplateStringsArray, ...values: unknown[]) =>
      (await ask(strings, values)).rowCount ?? 0,
  };
  const guarded = new Proxy(raw, {
    get: (target, name) => {
      if (name === '$queryRaw' || name === '$executeRaw') return target[name];
      throw new ModelWanted(String(name));
    },
  });
  return guarded as unknown as Transaction;
}

/** Statements by the place in the code that they stand at. */
const statements = new WeakMap<TemplateStringsArray, { name: string; text: string }>();

/** A statement as the database keeps it prepared; named by its text, for a connection serves several copies of this file. */
function statementOf(strings: TemplateStringsArray): { name: string; text: string } {
  const known = statements.get(strings);
  if (known) return known;
  const text = strings.reduce((sum, part, i) => `${sum}$${i}${part}`);
  const made = { name: createHash('sha256').update(text).digest('hex').slice(0, 32), text };
  statements.set(strings, made);
  return made;
}
