import { difference } from '#core/facility/difference';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { anyKeepableFacility } from '../../_support/keepable';
import { keep, stored } from '../../_support/stored';

freshDatabase();

describe('a facility that was stored', () => {
  test('comes back as it was', async () => {
    await keep(facility());
    expect((await stored('harbour')).facility).toEqual(facility());
  });

  test('comes back as it was, whatever it holds and whatever was stored of the site before', async () => {
    await fc.assert(
      fc.asyncProperty(anyKeepableFacility(), async (given) => {
        await keep(given);
        const { facility: back } = await stored(given.site.key);
        expect(back).toEqual(given);
        expect(difference(back, given)).toEqual([]);
      }),
      { numRuns: 12 },
    );
  });
});
