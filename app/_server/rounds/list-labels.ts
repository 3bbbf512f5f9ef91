import 'server-only';
import { livedIn } from '#core/rounds/places';
import { tankCode } from '#core/rounds/tank-code';
import { ok, type Result } from '#core/result';
import { siteRounds } from '#shape/rounds/requests';
import { wholeAddress } from '../calls/address';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';

export const listLabelsShape = siteRounds;

/** The labels of the tanks of a site. */
interface LabelsPage {
  site: { key: string; name: string };
  /** Where a telephone finds Holdfast, without a path. */
  origin: string;
  labels: { system: string; tank: string; code: string }[];
}

/** A label for each tank that animals live in, with the code that leads to its checks. */
export async function listLabels(who: Who, { site: key }: { site: string }): Promise<Result<LabelsPage, Refusal>> {
  const found = await findStoredSite(who, 'see', key);
  if (!found.ok) return found;
  const { entry: site, stored } = found.value;
  const labels = stored.facility.systems.flatMap((system) =>
    livedIn(system).map((tank) => ({
      system: system.name,
      tank: tank.name,
      code: tankCode(system.key, tank.key),
    })),
  );
  return ok({
    site: { key: site.key, name: site.name },
    origin: new URL(wholeAddress('/')).origin,
    labels,
  });
}
