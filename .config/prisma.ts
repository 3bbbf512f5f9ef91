import { fileURLToPath } from 'node:url';
import { defineConfig } from 'prisma/config';
import { storedDatabaseUrl } from '../app/_start/postgres/stored.mjs';

// Prisma's command line looks here first. The database is the one that DATABASE_URL names, else the embedded one of the
// data folder, so that a developer's `migrate dev` needs no setting while `npm start` runs.
const inProject = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

export default defineConfig({
  schema: inProject('prisma/schema.prisma'),
  migrations: { path: inProject('prisma/migrations') },
  datasource: { url: process.env.DATABASE_URL || storedDatabaseUrl() },
});
