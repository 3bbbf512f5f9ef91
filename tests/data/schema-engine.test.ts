import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { compare, judgeDifference } from '../../prisma/engine/difference.mjs';
import { prismaCommand } from '../../prisma/engine/command.mjs';
import { ask, freshDatabase } from '../_support/database';
import { runProgram } from '../_support/run-program';
import { temporaryFolder } from '../_support/temporary-folder';

const { query } = freshDatabase();
const folder = temporaryFolder();
const SCHEMA = 'prisma/schema.prisma';
/** Databases aside are made by the owner of the server. */
const asOwner = () => ({ ...process.env, DATABASE_URL: inject('databaseServer') });
const MIGRATIONS = ['--from-migrations', 'prisma/migrations'];

describe('the check that migrations and schema agree', () => {
  test('passes on the words of Prisma together with exit code 0, and on neither alone', () => {
    const words = 'No difference detected.';
    expect(judgeDifference({ status: 0, output: words }).same).toBe(true);
    expect(judgeDifference({ status: 0, output: '' }).same).toBe(false);
    expect(judgeDifference({ status: 2, output: words }).same).toBe(false);
    expect(judgeDifference({ status: 101, output: words }).same).toBe(false);
    expect(judgeDifference({ status: null, output: words }).same).toBe(false);
  });

  test('passes for what is in the project', () => {
    expect(compare([...MIGRATIONS, '--to-schema', SCHEMA], asOwner())).toMatchObject({ same: true });
  });

  test('fails for a schema with one column more, and names it', () => {
    const changed = join(folder, 'changed.prisma');
    const schema = readFileSync(SCHEMA, 'utf8');
    writeFileSync(changed, schema.replace('@@map("worker_sighting")', 'mood String?\n  @@map("worker_sighting")'));
    const verdict = compare([...MIGRATIONS, '--to-schema', changed], asOwner());
    expect(verdict.same).toBe(false);
    expect(verdict.why).toContain('mood');
  });

  test('leaves no shadow database behind', async () => {
    const { rows } = await query("SELECT datname FROM pg_database WHERE datname LIKE '%shadow%'");
    expect(rows).toEqual([]);
  });
});

describe('a migration written by hand', () => {
  const project = join(folder, 'project');

  /** A project of its own beside this one: a schema, one migration, and the configuration that names them. */
  beforeAll(() => {
    mkdirSync(join(project, 'migrations/1_by_hand'), { recursive: true });
    writeFileSync(join(project, 'migrations/migration_lock.toml'), 'provider = "postgresql"\n');
    writeFileSync(join(project, 'schema.prisma'), BY_HAND_SCHEMA);
    const config = { schema: 'schema.prisma', migrations: { path: 'migrations' } };
    writeFileSync(
      join(project, 'config.mjs'),
      `export default { ...${JSON.stringify(config)}, datasource: { url: process.env.BY_HAND_URL } };\n`,
    );
  });

  function addressOf(database: string): string {
    const address = new URL(inject('databaseServer'));
    address.pathname = `/${database}`;
    return address.href;
  }

  async function prisma(words: string[], database: string) {
    const { args, env } = prismaCommand(words, process.env, join(project, 'config.mjs'));
    return await runProgram(args, { ...env, BY_HAND_URL: addressOf(database) });
  }

  test('that fails half-way leaves nothing of itself', async () => {
    const broken = `${BY_HAND}\nSELECT no_such_function();`;
    writeFileSync(join(project, 'migrations/1_by_hand/migration.sql'), broken);
    const ended = await prisma(['migrate', 'deploy'], 'by_hand_broken');
    expect(ended.code).toBe(1);
    expect(ended.stderr).toContain('no_such_function');
    const { rows } = await ask(addressOf('by_hand_broken'), "SELECT to_regclass('sample') AS sample");
    await query('DROP DATABASE by_hand_broken');
    expect(rows).toEqual([{ sample: null }]);
  });

  test('with partitions, checks, exclusions, a function and a trigger is applied, and then nothing differs', async () => {
    writeFileSync(join(project, 'migrations/1_by_hand/migration.sql'), BY_HAND);
    expect(await prisma(['migrate', 'deploy'], 'by_hand')).toMatchObject({ code: 0 });
    const sides = ['--from-config-datasource', '--to-schema', join(project, 'schema.prisma'), '--exit-code'];
    const ended = await prisma(['migrate', 'diff', ...sides], 'by_hand');
    expect(judgeDifference({ status: ended.code, output: ended.stdout + ended.stderr })).toMatchObject({ same: true });
    await query('DROP DATABASE by_hand');
  });
});

const BY_HAND_SCHEMA = `
datasource db {
  provider = "postgresql"
}
model Sample {
  sensor Int
  at     DateTime @db.Timestamptz(3)
  value  Float    @db.Real
  @@id([sensor, at])
  @@map("sample")
}
model Booking {
  id   Int      @id
  from DateTime @db.Timestamptz(3)
  to   DateTime @db.Timestamptz(3)
  @@map("booking")
}
`;

const BY_HAND = `
CREATE TABLE "sample" (
  "sensor" INTEGER NOT NULL,
  "at" TIMESTAMPTZ(3) NOT NULL,
  "value" REAL NOT NULL CHECK ("value" > -300),
  CONSTRAINT "sample_pkey" PRIMARY KEY ("sensor", "at")
) PARTITION BY RANGE ("at");
CREATE TABLE "sample_2026" PARTITION OF "sample" FOR VALUES FROM ('2026-01-01Z') TO ('2027-01-01Z');
CREATE TABLE "booking" (
  "id" INTEGER NOT NULL,
  "from" TIMESTAMPTZ(3) NOT NULL,
  "to" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "booking_pkey" PRIMARY KEY ("id"),
  CONSTRAINT "one_at_a_time" EXCLUDE USING gist (tstzrange("from", "to") WITH &&)
);
CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'kept; not changed';
  RETURN NULL;
END;
$$;
CREATE TRIGGER booking_is_kept BEFORE UPDATE ON "booking" FOR EACH ROW EXECUTE FUNCTION refuse();
CREATE VIEW "latest" AS SELECT "sensor", max("at") AS "at" FROM "sample" GROUP BY "sensor";
`;
