import 'server-only';
import protobuf from 'protobufjs';
import type { SparkplugPayload } from '#core/readings/sparkplug/metric';
import { ok, type Result, refused } from '#core/result';
import { sparkplugPayload } from '#shape/readings/sparkplug-payload';
import descriptor from './payload.json';

/** The fields of the published message that are read (Eclipse Tahu, sparkplug_b.proto); what is left out is skipped. */
const payload = protobuf.Root.fromJSON(descriptor).lookupType('Payload');
/** Values of one message. */
const MOST_METRICS = 20_000;

/**
 * Decodes a payload of Sparkplug B.
 *
 * @param bytes   bounded by whoever received them
 * @returns       what it says; or what is wrong, as a sentence's end
 */
export function decodeSparkplug(bytes: Uint8Array): Result<SparkplugPayload, string> {
  try {
    const message = payload.toObject(payload.decode(bytes), { longs: String });
    const read = sparkplugPayload.safeParse(message);
    if (!read.success) return refused('is no Sparkplug B payload');
    if (read.data.metrics.length > MOST_METRICS) return refused(`holds more than ${MOST_METRICS} values`);
    return ok(read.data);
  } catch {
    // The decoder throws for whatever is no message of this kind.
    return refused('is no Sparkplug B payload');
  }
}

/**
 * What asks a node to be born again: the one thing Holdfast ever writes to a broker, and only where somebody allowed it.
 *
 * @param atMs   the present, ms since 1970
 */
export function encodeRebirth(atMs: number): Uint8Array {
  const metric = { name: 'Node Control/Rebirth', timestamp: atMs, datatype: 11, booleanValue: true };
  return payload.encode(payload.fromObject({ timestamp: atMs, metrics: [metric] })).finish();
}
