import { handle } from '#server/gate/handle';
import { exportRecord, exportRecordShape } from '#server/record/export-record';

export const dynamic = 'force-dynamic';

/** The record of a site as CSV; `?kind=…` and `?by=…` give a part of it. */
export const GET = handle(
  exportRecordShape,
  exportRecord,
  ({ name, text }) =>
    new Response(text, {
      headers: { 'content-type': 'text/csv; charset=utf-8', 'content-disposition': `attachment; filename="${name}"` },
    }),
);
