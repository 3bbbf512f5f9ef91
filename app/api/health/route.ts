import { reportHealth } from '#server/health/report';

// Asked anew every time: a kept answer would say that all is well when it no longer is.
export const dynamic = 'force-dynamic';

/** 200 while the database answers, else 503. */
export async function GET(): Promise<Response> {
  const health = await reportHealth();
  return Response.json(health, { status: health.database === 'up' ? 200 : 503 });
}
