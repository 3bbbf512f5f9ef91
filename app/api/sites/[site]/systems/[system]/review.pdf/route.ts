import { handle } from '#server/gate/handle';
import { printReview, printReviewShape } from '#server/reviews/print-review';

export const dynamic = 'force-dynamic';

/** The review of a system as a PDF; `?units=us` gives it in US units. */
export const GET = handle(
  printReviewShape,
  printReview,
  ({ name, file }) =>
    new Response(new Uint8Array(file), {
      headers: { 'content-type': 'application/pdf', 'content-disposition': `attachment; filename="${name}"` },
    }),
);
