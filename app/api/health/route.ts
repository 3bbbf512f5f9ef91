import { reportHealth } from '#server/health/report';

// Asked anew every time: a kept answer would say that all is well when it no longer is.
export const dynamic = 'force-dynamic';

/** 200 while the database answers, and with `?of=alarms` while alarms are being judged as well; else 503. */
export async function GET(request: Request): Promise<Response> {
  const health = await reportHealth();
  const isOfAlarms = new URL(request.url).searchParams.get('of') === 'alarms';
  const isUp = health.database === 'up' && !(isOfAlarms && health.alarms === 'not judged');
  return Response.json(health, { status: isUp ? 200 : 503 });
}
