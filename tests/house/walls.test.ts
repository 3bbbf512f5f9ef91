import { createRequire } from 'node:module';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { biome } from './breach/biome';
import { BIOME_PLANTS } from './breach/biome-plants';
import { buildCopy, removeCopy } from './breach/copy';
import { coreTypes } from './breach/core-types';
import { cruiser } from './breach/cruiser';
import { CRUISER_PLANTS, CRUISER_PROPS } from './breach/cruiser-plants';
import { eslint } from './breach/eslint';
import { ESLINT_PLANTS } from './breach/eslint-plants';
import { knip } from './breach/knip';
import { CORE_TYPE_PLANTS, IDLE_PACKAGES, KNIP_ALSO, KNIP_PLANTS, KNIP_PROPS } from './breach/other-plants';
import type { Complaint, Report } from './breach/report';
import { ROOT } from './inspect/files';

// Whole programs are run; on a busy machine that takes its time.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

// The real configuration is tried on a small house outside the tree: once as it should be, once with every breach
// planted at the same time, one run of each checker over both.
const PLANTED = [
  ...CRUISER_PROPS,
  ...KNIP_PROPS,
  ...BIOME_PLANTS,
  ...ESLINT_PLANTS,
  ...CRUISER_PLANTS,
  ...CORE_TYPE_PLANTS,
  ...KNIP_PLANTS,
];

let clean = '';
let broken = '';

beforeAll(() => {
  clean = buildCopy([]);
  broken = buildCopy(PLANTED, IDLE_PACKAGES);
});

afterAll(() => {
  removeCopy(clean);
  removeCopy(broken);
});

/** Breaches that went past the checker, one line of words each. */
const missed = (expected: Complaint[], report: Report): string[] =>
  expected
    .filter(({ file, rule }) => !report.complaints.some((said) => said.file === file && said.rule === rule))
    .map(({ file, rule }) => `${rule} said nothing about ${file}`);

/** Complaints about files in which nothing was planted. */
const unjust = (report: Report): Complaint[] => {
  const planted = new Set([...PLANTED.map(({ file }) => file), 'package.json']);
  return report.complaints.filter(({ file }) => !planted.has(file));
};

const CHECKERS: { name: string; check: (top: string) => Promise<Report>; expected: Complaint[]; least: number }[] = [
  { name: 'biome', check: biome, expected: BIOME_PLANTS, least: 30 },
  { name: 'typescript-eslint', check: eslint, expected: ESLINT_PLANTS, least: 20 },
  { name: 'dependency-cruiser', check: cruiser, expected: CRUISER_PLANTS, least: 20 },
  { name: 'knip', check: knip, expected: [...KNIP_PLANTS, ...KNIP_ALSO], least: 20 },
  { name: 'the types of the core', check: coreTypes, expected: CORE_TYPE_PLANTS, least: 2 },
];

describe.each(CHECKERS)('$name', ({ check, expected, least }) => {
  test('passes a house without a breach, having read it', async () => {
    const report = await check(clean);
    expect(report.complaints, report.text).toEqual([]);
    expect(report.exitCode, report.text).toBe(0);
    expect(report.filesRead).toBeGreaterThanOrEqual(least);
  });

  test('fails a house with breaches, names every one and blames nobody else', async () => {
    const report = await check(broken);
    expect(expected.length).toBeGreaterThan(0);
    expect(missed(expected, report)).toEqual([]);
    expect(unjust(report)).toEqual([]);
    expect(report.exitCode).not.toBe(0);
  });
});

describe('the rules about imports', () => {
  const Rules = z.object({
    forbidden: z.array(z.object({ name: z.string(), comment: z.string(), severity: z.string() })),
  });
  const { forbidden } = Rules.parse(createRequire(import.meta.url)(join(ROOT, '.config/dependency-cruiser.cjs')));

  test('each is an error, has a planted breach, and says in two sentences what is so and what to do instead', () => {
    expect(forbidden.length).toBeGreaterThan(20);
    const planted = new Set(CRUISER_PLANTS.map(({ rule }) => rule));
    expect(forbidden.filter(({ name }) => !planted.has(name))).toEqual([]);
    expect(forbidden.filter(({ severity }) => severity !== 'error')).toEqual([]);
    expect(forbidden.filter(({ comment }) => comment.split(/[.:] /).length < 2)).toEqual([]);
  });
});
