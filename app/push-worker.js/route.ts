import { PUSH_WORKER } from '#server/calls/push-worker';
import { WALK_WORKER } from '#server/web/walk-worker';

/** The script that a browser keeps: it shows calls, and keeps the page by which rounds are walked without a signal. The same for everybody. */
export function GET(): Response {
  return new Response(PUSH_WORKER + WALK_WORKER, { headers: { 'content-type': 'text/javascript; charset=utf-8' } });
}
