import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { importsAt } from '#data/readings/file-layouts';
import { sitePlace } from '#shape/reviews/case-place';
import type { Refusal } from '../../gate/refusal';
import { siteFor } from '../../gate/site-for';
import type { Who } from '../../gate/who';
import type { Outcome } from './outcome';

/** A file that was taken in. */
export interface ImportLine {
  id: string;
  fileName: string;
  layout: string;
  /** UTC, ISO. */
  at: string;
  by: string;
  stored: number;
  repeats: number;
  conflicts: number;
  refused: number;
}

/** The files that were taken in at a site last. */
export interface SiteImports {
  site: { key: string; name: string; zone: string };
  imports: ImportLine[];
}

export const listImportsShape = sitePlace;

/** Files shown. */
const SHOWN = 20;

/** The files of loggers that were taken in at a site, the latest first. */
export async function listImports(
  who: Who,
  { site: key }: z.output<typeof listImportsShape>,
): Promise<Result<SiteImports, Refusal>> {
  const found = await siteFor(who, 'take-in-file', key);
  if (!found.ok) return found;
  const { id, name, zone } = found.value;
  const kept = await importsAt(id, SHOWN);
  const names = await accountNames(kept.map(({ by }) => by));
  const imports = kept.map(({ id: importId, fileName, layoutName, at, by, outcome }): ImportLine => {
    const { stored, repeats, conflicts, refused } = outcome as Outcome;
    const counts = { stored, repeats, conflicts, refused };
    return { id: importId, fileName, layout: layoutName, at: at.toISOString(), by: names.get(by) ?? by, ...counts };
  });
  return ok({ site: { key, name, zone }, imports });
}
