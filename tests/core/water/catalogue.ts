import { readdirSync, readFileSync } from 'node:fs';
import type { Law } from '#core/water/law';

export const WATER = new URL('../../../app/_core/water/', import.meta.url);

/** What makes laws, and what several share: neither is a law. */
const NO_LAWS = new Set(['law.ts', 'carbonate-balance.ts']);

/** A file of the room with everything the tests about laws ask of it. */
export interface LawFile {
  name: string;
  text: string;
  laws: Law<number[]>[];
}

function isLaw(value: unknown): value is Law<number[]> {
  return typeof value === 'object' && value !== null && 'checked' in value && 'compute' in value;
}

/** Every law file of the room, as it lies on the disk: a new one cannot be forgotten. */
export async function lawFiles(): Promise<LawFile[]> {
  const names = readdirSync(WATER).filter((name) => name.endsWith('.ts') && !NO_LAWS.has(name));
  return Promise.all(
    names.map(async (name) => {
      const module = (await import(new URL(name, WATER).href)) as Record<string, unknown>;
      return { name, text: readFileSync(new URL(name, WATER), 'utf8'), laws: Object.values(module).filter(isLaw) };
    }),
  );
}
