// @ts-check
// Prisma's schema engine as WebAssembly: the same bytes that lie inside the `prisma` package, from a package that names
// them, so that nothing is downloaded.
import { readFileSync } from 'node:fs';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import { adapterFor } from './adapter.mjs';

const GLUE = import.meta.resolve('@prisma/schema-engine-wasm/schema_engine_bg');

/** @returns {string} the version of the engine package, which ends in the hash of Prisma's own engine */
export function engineVersion() {
  return JSON.parse(readFileSync(new URL('./package.json', GLUE), 'utf8')).version;
}

/**
 * Starts the engine.
 *
 * @param {string | undefined} url address of the database; absent when only files are compared
 * @param {string[]} datamodels paths of the schema files
 * @param {(message: string) => void} onPanic told the engine's last words when it panics
 * @returns {Promise<Record<string, (params: unknown) => Promise<unknown>>>} the engine, one method an errand
 */
export async function startEngine(url, datamodels, onPanic) {
  Object.assign(globalThis, { PRISMA_WASM_PANIC_REGISTRY: { set_message: onPanic } });
  const glue = await import(GLUE);
  const module = await WebAssembly.compile(readFileSync(new URL('./schema_engine_bg.wasm', GLUE)));
  const imports = Object.fromEntries(WebAssembly.Module.imports(module).map((wanted) => [wanted.module, glue]));
  const instance = await WebAssembly.instantiate(module, imports);
  glue.__wbg_set_wasm(instance.exports);
  /** @type {{ __wbindgen_start?: () => void }} */ (instance.exports).__wbindgen_start?.();
  const sources = datamodels.map((path) => [path, readFileSync(path, 'utf8')]);
  return glue.SchemaEngine.new(
    { datamodels: sources.length > 0 ? sources : undefined },
    (/** @type {string} */ line) => process.env.DEBUG_ENGINE && process.stderr.write(`${line}\n`),
    bindMigrationAwareSqlAdapterFactory(adapterFor(url ?? 'postgresql://localhost/none')),
  );
}
