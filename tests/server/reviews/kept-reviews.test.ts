import { beforeEach, describe, expect, test } from 'vitest';
import { keepable } from '#core/review/keepable';
import { reviewSystem } from '#core/review/review-system';
import type { SystemReview } from '#core/review/result';
import { findKept, listKept } from '#data/reviews/kept';
import type { Compute } from '#server/reviews/compute';
import { reviewSite } from '#server/reviews/review-site';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const canned = reviewSystem(smallFacility(), smallSystem(), '2026-06-01');
const [siteKey, systemKey] = [smallFacility().site.key, smallSystem().key];

const saying = (review: SystemReview): Compute => {
  return async () => await Promise.resolve(review);
};
const withLitres = (salinity: number) =>
  smallFacility({ ...smallSystem(), salinity: { value: salinity, origin: 'entered' } });

async function keptNow() {
  const { siteId, systemIds } = await stored(siteKey);
  const systemId = systemIds.get(systemKey) ?? '';
  return { siteId, systemId, list: await listKept(siteId, systemId, 10) };
}

/** Describes the system otherwise, and has its review say so. */
async function reviewed(salinity: number, review: SystemReview): Promise<void> {
  await keep(withLitres(salinity));
  await reviewSite((await stored(siteKey)).siteId, { compute: saying(review) });
}

describe('reviews that are kept', () => {
  beforeEach(async () => {
    await query(`SET session_replication_role = replica; DELETE FROM site; DELETE FROM system; DELETE FROM review_run;
      DELETE FROM review_result; DELETE FROM review_kept; DELETE FROM graphile_worker._private_jobs`);
  });

  test('are those that say something else than the one before', async () => {
    const other = { ...canned, findings: canned.findings.slice(1) };
    await reviewed(33, canned);
    await reviewed(34, canned);
    await reviewed(35, other);
    await reviewed(36, canned);
    const { siteId, systemId, list } = await keptNow();
    expect(list.length).toBe(3);
    const found = await Promise.all(list.map(({ id }) => findKept(siteId, systemId, id)));
    expect(found.map((one) => one?.review.findings.length)).toEqual([
      canned.findings.length,
      canned.findings.length - 1,
      canned.findings.length,
    ]);
    expect(found[0]?.review).toEqual(JSON.parse(JSON.stringify(keepable(canned))));
    expect(list[0]?.summary.cases).toBe(canned.cases.length);
  });

  test('of another system or site are not found', async () => {
    await reviewed(33, canned);
    const { siteId, systemId, list } = await keptNow();
    const id = list[0]?.id ?? '';
    expect(await findKept(siteId, systemId, id)).not.toBeNull();
    expect(await findKept(siteId, siteId, id)).toBeNull();
    expect(await findKept(systemId, systemId, id)).toBeNull();
  });

  test('name nobody: who took a safeguard off is left out', () => {
    const named = {
      ...canned,
      findings: [
        {
          id: 'do:safeguard-back',
          grade: 'low' as const,
          remedy: 'Put it back',
          title: 'A safeguard is off',
          lines: [
            {
              from: { rule: 'safeguard-off' },
              cause: 'Run limit',
              consequence: 'It does nothing meanwhile.',
              figures: [
                { name: 'until', value: '2026-06-05' },
                { name: 'by', value: 'First keeper' },
              ],
              source: 'common practice, no source',
            },
          ],
        },
      ],
    };
    const text = JSON.stringify(keepable(named));
    expect(text).not.toContain('First keeper');
    expect(text).toContain('2026-06-05');
  });

  test('cannot be changed or taken away', async () => {
    await reviewed(33, canned);
    await query('SET session_replication_role = origin');
    await expect(query("UPDATE review_kept SET engine_version = '0'")).rejects.toThrow();
    await expect(query('DELETE FROM review_kept')).rejects.toThrow();
  });
});
