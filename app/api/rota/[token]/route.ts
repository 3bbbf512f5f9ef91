import { handleOpenly } from '#server/gate/open';
import { readFeed, readFeedShape } from '#server/rota/read-feed';

export const dynamic = 'force-dynamic';

/** The rota as an iCalendar, for whoever has the address. */
export const GET = handleOpenly(
  readFeedShape,
  readFeed,
  (text) =>
    new Response(text, {
      headers: {
        'content-type': 'text/calendar; charset=utf-8',
        'content-disposition': 'inline; filename="rota.ics"',
        'cache-control': 'private, no-store',
      },
    }),
);
