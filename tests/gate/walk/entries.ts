import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { listFiles, ROOT } from '../../house/inspect/files';

/** Everything by which somebody outside reaches the house. */
export interface Entry {
  /** Its file; with the method of a handler or the name of an action behind it. */
  name: string;
  kind: 'page' | 'handler' | 'action';
  /** What Next would call. */
  call: (...given: never[]) => unknown;
  /** What a page says of itself in its head, when it works that out. */
  metadata?: (...given: never[]) => unknown;
}

const METHODS = new Set(['GET', 'HEAD', 'OPTIONS', 'POST', 'PUT', 'PATCH', 'DELETE']);
/** A file of a room is no entry; one with 'use server' is, wherever it lies. */
const ROOM = /^app\/_/;

/** Finds every page, handler and server action of the tree by looking at its files, so that none can be forgotten. */
export async function findEntries(): Promise<Entry[]> {
  const files = listFiles(['app'], /\.tsx?$/);
  const found = await Promise.all(files.map(entriesIn));
  return found.flat();
}

async function entriesIn(path: string): Promise<Entry[]> {
  if (/^\s*['"]use server['"]/.test(readFileSync(join(ROOT, path), 'utf8'))) return await actionsIn(path);
  if (ROOM.test(path)) return [];
  if (path.endsWith('/route.ts')) return await handlersIn(path);
  // What stands over a page asks for itself, and tells what it was answered.
  return /\/(page|layout)\.tsx$/.test(path) ? [await pageIn(path)] : [];
}

async function actionsIn(path: string): Promise<Entry[]> {
  return Object.entries(await functionsOf(path)).map(([name, call]) => ({
    name: `${path} ${name}`,
    kind: 'action',
    call,
  }));
}

async function handlersIn(path: string): Promise<Entry[]> {
  const methods = Object.entries(await functionsOf(path)).filter(([name]) => METHODS.has(name));
  return methods.map(([name, call]) => ({ name: `${path} ${name}`, kind: 'handler', call }));
}

async function pageIn(path: string): Promise<Entry> {
  const { default: call, generateMetadata: metadata } = await functionsOf(path);
  if (!call) throw new Error(`${path} has no page in it`);
  return { name: path, kind: 'page', call, ...(metadata ? { metadata } : {}) };
}

async function functionsOf(path: string): Promise<Record<string, Entry['call']>> {
  const module: Record<string, unknown> = await import(/* @vite-ignore */ join(ROOT, path));
  return Object.fromEntries(
    Object.entries(module).filter((one): one is [string, Entry['call']] => typeof one[1] === 'function'),
  );
}
