import { handle } from '#server/gate/handle';
import { exportReadings, exportReadingsShape } from '#server/readings/export-readings';

export const dynamic = 'force-dynamic';

/** The readings of a sensor as CSV; `?span=…` and `?until=…` say of when. */
export const GET = handle(
  exportReadingsShape,
  exportReadings,
  ({ name, text }) =>
    new Response(text, {
      headers: { 'content-type': 'text/csv; charset=utf-8', 'content-disposition': `attachment; filename="${name}"` },
    }),
);
