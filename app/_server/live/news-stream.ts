import 'server-only';
import { NEWS } from '#data/news';
import { may } from '../gate/may';
import { whoAsks } from '../gate/who';
import { gather } from './gather';
import { hearNews } from './hub';
import { openStream } from './open-streams';
import type { Watched } from './watch-site';

/** ms between two signs of life, by which both ends find out that the other is gone. */
const HEARTBEAT_MS = 20_000;
/** ms after which it is asked again whether whoever watches is still allowed to. */
const ASK_AGAIN_MS = 60_000;
/** ms a browser waits before it comes back. */
const RETRY_MS = 1000;

const HEADERS = {
  'content-type': 'text/event-stream; charset=utf-8',
  // Whoever presses an answer together holds it back until there is enough of it.
  'cache-control': 'no-store, no-transform',
  'x-accel-buffering': 'no',
};

/** How long things take; another in tests. */
export interface Pace {
  heartbeatMs: number;
  askAgainMs: number;
}

/**
 * The stream of changes at a site, as server-sent events (HTML Living Standard, 9.2): each event is called `news` and its data
 * are the words of what has changed. It begins with everything, so that a browser that comes, or comes back, has missed
 * nothing. It ends when the browser goes, when whoever watches may no longer, and with the process.
 *
 * @param watched   the site, and who watches it, who may have only so many streams open
 * @param request   the request; its session is looked at again every minute
 */
export function newsStream(
  { id, key, by }: Watched,
  request: Request,
  { heartbeatMs, askAgainMs }: Pace = { heartbeatMs: HEARTBEAT_MS, askAgainMs: ASK_AGAIN_MS },
): Response {
  const close = openStream(by);
  if (!close) return new Response('Too many pages are open.\n', { status: 429, headers: { 'retry-after': '60' } });
  const text = new TextEncoder();
  let stop: () => void = () => undefined;
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      let isOver = false;
      const finish = () => {
        if (isOver) return;
        stop();
        controller.close();
      };
      const say = (words: string) => {
        if (!isOver) controller.enqueue(text.encode(words));
      };
      const gatherer = gather((what) => say(`event: news\ndata: ${what.join(' ')}\n\n`));
      const stopHearing = hearNews(id, gatherer.add, () => finish());
      const heartbeat = setInterval(() => say(': here\n\n'), heartbeatMs);
      const asking = setInterval(() => void mayStill(request, key).then((still) => still || finish()), askAgainMs);
      stop = () => {
        isOver = true;
        close();
        stopHearing();
        gatherer.stop();
        clearInterval(heartbeat);
        clearInterval(asking);
        request.signal.removeEventListener('abort', finish);
      };
      say(`retry: ${RETRY_MS}\n: watching\n\n`);
      // Between the making of a page and its watching something may have changed.
      gatherer.add(NEWS);
      if (request.signal.aborted) finish();
      else request.signal.addEventListener('abort', finish);
    },
    // The reader has gone: the stream is closed already.
    cancel: () => stop(),
  });
  return new Response(body, { headers: HEADERS });
}

/** The session may have ended, or the role at the site. A database that does not answer just now ends nothing. */
async function mayStill(request: Request, site: string): Promise<boolean> {
  try {
    const who = await whoAsks(request.headers);
    return who !== null && may(who, 'see', site);
  } catch {
    return true;
  }
}
