#!/usr/bin/env node
// @ts-check
// What Prisma's command line starts in place of the engine it would otherwise download: see DEVELOPERS.md, "The schema
// engine". `PRISMA_SCHEMA_ENGINE_BINARY` points here; run.mjs sets it.
import { parseArgs } from 'node:util';
import { announceKnownTypes, leaveNotNullOut } from './catalogue-types.mjs';
import { converse, crash, rememberPanic } from './conversation.mjs';
import { runDatabaseCommand } from './database-commands.mjs';
import { engineVersion, startEngine } from './wasm.mjs';

if (process.argv.includes('--version')) {
  process.stdout.write(`schema-engine-cli ${engineVersion()}\n`);
  process.exit(0);
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  strict: false,
  options: { datasource: { type: 'string' }, datamodels: { type: 'string', multiple: true, short: 'd' } },
});
const url = typeof values.datasource === 'string' ? JSON.parse(values.datasource).url : undefined;
const datamodels = (Array.isArray(values.datamodels) ? values.datamodels : []).map(String);

if (positionals[0] === 'cli') process.exit(await runDatabaseCommand(positionals[1], url));

process.on('uncaughtException', crash);
process.on('unhandledRejection', crash);
announceKnownTypes();
leaveNotNullOut();
converse(() => startEngine(url, datamodels, rememberPanic));
