import 'server-only';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { env } from '../env';
import { dataFolder } from './places';

const Stored = z.object({ port: z.number() });

/**
 * Where the database stands: `here` when it is the embedded one, whose disk is that of the data folder, and `elsewhere` when
 * somebody named another, of whose disk nothing is known.
 */
export async function databasePlace(): Promise<'here' | 'elsewhere'> {
  const { hostname, port } = new URL(env().DATABASE_URL);
  try {
    const stored = Stored.parse(JSON.parse(await readFile(join(dataFolder(), 'database.json'), 'utf8')));
    return hostname === '127.0.0.1' && Number(port) === stored.port ? 'here' : 'elsewhere';
  } catch {
    return 'elsewhere';
  }
}
