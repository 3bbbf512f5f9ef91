import 'server-only';
import { type SensorHistory, storeHistory } from '#data/readings/store-history';
import type { Telling } from './told';

/** Stores what the gateways of a demonstration's site sent. */
export async function keepReadings({ tx, siteId, past, idOf }: Telling): Promise<void> {
  for (const { series } of past.systems.values()) {
    const histories = series.map(
      ({ system, sensor, atMs, values, odd }): SensorHistory => ({
        sensorId: idOf('sensor', system, sensor),
        origin: 'device',
        atMs,
        values,
        odd,
      }),
    );
    await storeHistory(tx, siteId, histories);
  }
}
