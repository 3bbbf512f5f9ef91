import 'server-only';
import { z } from 'zod';
import { ok, refused, type Result } from '#core/result';
import { anchorsOf, type SentAnchor } from '#data/records/anchors';
import { checksOf } from '#data/records/checks';
import { findSite } from '#data/sites';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
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
  const site = may(who, 'see', key) ? await findSite(key) : null;
  if (!site) return refused({ why: 'not-found', what: 'site' });
  if (!may(who, 'read-record', key)) return refused({ why: 'not-allowed' });
  const anchors = await anchorsOf(site.id, SHOWN);
  const [check = null] = await checksOf([site.id]);
  return ok({
    places: anchorPlaces().map(({ place, target }) => ({ place, target })),
    anchors: anchors.map(({ day, seq, at, sent }) => ({ day, seq, at, sent })),
    check: check && { checkedAt: check.checkedAt, links: check.links, brokenSeq: check.brokenSeq, wrong: check.wrong },
  });
}
