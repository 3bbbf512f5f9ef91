import { PUSH_WORKER } from '#server/calls/push-worker';

/** The script that a browser keeps and runs when a call comes: the same for everybody. */
export function GET(): Response {
  return new Response(PUSH_WORKER, { headers: { 'content-type': 'text/javascript; charset=utf-8' } });
}
