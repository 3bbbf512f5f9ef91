import 'server-only';
import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient } from '../../prisma/generated/client';
import { pool } from './pool';

const kept: typeof globalThis & { holdfastClient?: PrismaClient } = globalThis;

/**
 * The one Prisma client of this process, over its one pool.
 *
 * @returns   the client
 * @throws    when DATABASE_URL is not set
 */
export function database(): PrismaClient {
  kept.holdfastClient ??= new PrismaClient({ adapter: new PrismaPg(pool()) });
  return kept.holdfastClient;
}
