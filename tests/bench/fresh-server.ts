import pg from 'pg';
import { closePool, pointAt } from '#data/pool';
import { throwAwayServer } from '../../app/_start/postgres/throw-away.mjs';
import { makeTemplate } from '../_support/make-template.mjs';
import { asProcess } from '../_support/template-name.mjs';

/** Runs something over a database of its own, migrated and empty, with the rights of the processes. */
export async function onFreshServer<T>(work: () => Promise<T>): Promise<T> {
  const server = await throwAwayServer();
  try {
    await makeTemplate(server.url);
    const owner = new pg.Client({ connectionString: server.url });
    await owner.connect();
    await owner.query('CREATE DATABASE bench TEMPLATE holdfast_template');
    await owner.end();
    const address = new URL(server.url);
    address.pathname = '/bench';
    pointAt(asProcess(address.href));
    return await work();
  } finally {
    await closePool();
    await server.remove();
  }
}
