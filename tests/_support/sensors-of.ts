import type { Quality } from '#core/readings/reading';
import type { NewReading } from '#data/readings/store-readings';
import type { Copy } from './database';

/** Ids of the living sensors of the built facility, by key. */
export async function sensorsOf(query: Copy['query']): Promise<Record<string, string>> {
  const { rows } = await query('SELECT key, id FROM sensor WHERE retired_at IS NULL');
  return Object.fromEntries(rows.map(({ key, id }) => [key, id]));
}

/** A reading by a device, good when nothing else is said. */
export function reading(
  sensorId: string,
  at: string,
  value: number,
  given: Partial<NewReading> & { quality?: Quality } = {},
): NewReading {
  return { sensorId, at: new Date(at), value, quality: 'good', origin: 'device', ...given };
}
