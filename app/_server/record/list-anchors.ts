import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import { anchorsOf, type SentAnchor } from '#data/records/anchors';
import { checksOf } from '#data/records/checks';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { anchorPlaces } from './anchor-places';

/** Anchors shown at most: three weeks. */
const SHOWN = 21;

/** What vouches for the record of a site from outside. */
export interface AnchorsKept {
  /** Places that anchors go to; none when none was named. */
  places: { place: string; target: string }[];
  /** The latest daily anchors, newest first, and which place each reached when. */
  anchors: { day: string; seq: number; at: Date; sent: SentAnchor[] }[];
  /** When the record was last gone through by itself, and what is broken since; null when it never was. */
  check: { checkedAt: Date; links: number; brokenSeq: number | null; wrong: string | null } | null;
}

export const listAnchorsShape = z.object({ site: z.string() });

/** The daily anchors of a site's record, for whoever may read the record. */
export async function listAnchors(who: Who, { site: key }: { site: string }): Promise<Result<AnchorsKept, Refusal>> {
  const site = await siteFor(who, 'read-record', key);
  if (!site.ok) return site;
  const { id } = site.value;
  const anchors = await anchorsOf(id, SHOWN);
  const [check = null] = await checksOf([id]);
  return ok({
    places: anchorPlaces().map(({ place, target }) => ({ place, target })),
    anchors: anchors.map(({ day, seq, at, sent }) => ({ day, seq, at, sent })),
    check: check && { checkedAt: check.checkedAt, links: check.links, brokenSeq: check.brokenSeq, wrong: check.wrong },
  });
}
