import { handle } from '#server/gate/handle';
import { newsStream } from '#server/live/news-stream';
import { watchSite, watchSiteShape } from '#server/live/watch-site';

export const dynamic = 'force-dynamic';

/** Says as long as it is listened to that something of a site has changed. */
export const GET = handle(watchSiteShape, watchSite, newsStream);
