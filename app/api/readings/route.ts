import { receiveReadings } from '#server/readings/receive';

export const dynamic = 'force-dynamic';

/** Readings from a source, with its token: SenML in JSON or CSV. */
export async function POST(request: Request): Promise<Response> {
  return await receiveReadings(request);
}
