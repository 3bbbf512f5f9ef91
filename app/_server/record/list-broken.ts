import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import { checksOf } from '#data/records/checks';
import { listRecordedSites } from '#data/sites';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';

/** A record that was found broken when it was last gone through. */
export interface BrokenRecord {
  site: { key: string; name: string };
  /** The first broken link, and what is wrong with it. */
  seq: number;
  wrong: string;
  checkedAt: Date;
}

export const listBrokenShape = z.undefined();

/** Every broken record of the sites somebody manages: the daily look found it, and no anchor is sent until it is dealt with. */
export async function listBroken(who: Who): Promise<Result<BrokenRecord[], Refusal>> {
  const sites = (await listRecordedSites()).filter(({ key }) => may(who, 'audit', key));
  const checks = new Map((await checksOf(sites.map(({ id }) => id))).map((check) => [check.siteId, check]));
  return ok(
    sites.flatMap(({ id, key, name }) => {
      const check = checks.get(id);
      if (!check || check.brokenSeq === null || check.wrong === null) return [];
      return [{ site: { key, name }, seq: check.brokenSeq, wrong: check.wrong, checkedAt: check.checkedAt }];
    }),
  );
}
