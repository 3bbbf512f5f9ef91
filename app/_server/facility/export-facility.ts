import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { loadFacility } from '#data/facility/load-facility';
import { findSite } from '#data/sites';
import { exportRequest } from '#shape/facility/file-request';
import { writeFacility } from '#shape/facility/write-facility';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';

/** A facility file to be handed out. */
export interface ExportedFile {
  name: string;
  /** Media type. */
  type: string;
  text: string;
}

export const exportFacilityShape = exportRequest;

const TYPES = { json: 'application/json', yaml: 'application/yaml' } as const;

/** The facility file of a site, in its canonical form; importing it changes nothing. */
export async function exportFacility(
  who: Who,
  { site, format }: z.output<typeof exportFacilityShape>,
): Promise<Result<ExportedFile, Refusal>> {
  const entry = may(who, 'see', site) ? await findSite(site) : null;
  const loaded = entry && (await loadFacility(entry.id));
  if (!loaded) return refused({ why: 'not-found', what: 'site' });
  return ok({ name: `${site}.${format}`, type: TYPES[format], text: writeFacility(loaded.facility, { format }) });
}
