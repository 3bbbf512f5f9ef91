import { beforeEach, describe, expect, test } from 'vitest';
import { keepable } from '#core/review/keepable';
import { reviewSystem } from '#core/review/review-system';
import type { SystemReview } from '#core/review/result';
import { findKept, listKept } from '#data/reviews/kept';
import { LOCAL_PERSON } from '#server/gate/who';
import { compareKept } from '#server/reviews/compare-kept';
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

  test('are compared, with what was changed at the site between them, for those who may read the record', async () => {
    const place = { site: siteKey, system: systemKey };
    await reviewed(33, canned);
    const alone = await compareKept(LOCAL_PERSON, place);
    expect(alone).toMatchObject({ ok: true, value: { from: null, difference: null, changes: null } });
    const [gone, ...left] = canned.findings;
    await reviewed(34, { ...canned, findings: left });
    const compared = await compareKept(LOCAL_PERSON, place);
    if (!(compared.ok && compared.value.from && compared.value.to)) throw new Error('not compared');
    const { difference, changes, from, to } = compared.value;
    expect(difference?.findings.map(({ id, after }) => [id, after])).toEqual([[gone?.id, null]]);
    expect(changes?.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^Imported a facility file: 1 difference/),
    ]);
    // The other way round the same finding comes.
    const back = await compareKept(LOCAL_PERSON, { ...place, from: to.id, to: from.id });
    expect(back.ok && back.value.difference?.findings.map(({ id, before }) => [id, before])).toEqual([
      [gone?.id, null],
    ]);
    const viewer = { ...LOCAL_PERSON, everywhere: null, at: { [siteKey]: 'viewer' as const } };
    expect(await compareKept(viewer, place)).toMatchObject({ ok: true, value: { changes: null } });
    const nowhere = { ...place, from: from.id, to: '019a0000-0000-7000-8000-000000000000' };
    expect(await compareKept(LOCAL_PERSON, nowhere)).toMatchObject({ ok: false, reason: { why: 'not-found' } });
  });

  test('cannot be changed or taken away', async () => {
    await reviewed(33, canned);
    await query('SET session_replication_role = origin');
    await expect(query("UPDATE review_kept SET engine_version = '0'")).rejects.toThrow();
    await expect(query('DELETE FROM review_kept')).rejects.toThrow();
  });
});
