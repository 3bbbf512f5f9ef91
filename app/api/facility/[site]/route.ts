import { exportFacility, exportFacilityShape } from '#server/facility/export-facility';
import { handle } from '#server/gate/handle';

export const dynamic = 'force-dynamic';

/** The facility file of a site, to be kept; `?format=yaml` gives it as YAML. */
export const GET = handle(
  exportFacilityShape,
  exportFacility,
  ({ name, type, text }) =>
    new Response(text, {
      headers: { 'content-type': `${type}; charset=utf-8`, 'content-disposition': `attachment; filename="${name}"` },
    }),
);
