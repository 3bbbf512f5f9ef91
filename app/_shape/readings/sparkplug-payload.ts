import type { Metric, MetricValue, SparkplugPayload } from '#core/readings/sparkplug/metric';
import { z } from 'zod';

/** 64 bits in decimal, as they come out of the decoder. */
const long = z.string().regex(/^\d{1,20}$/);
/** ms since 1970; what no clock can show is no time. */
const instant = long.transform(Number).pipe(z.number().max(8.64e15)).optional().catch(undefined);
const flag = z.boolean().default(false);

const metric = z
  .object({
    name: z.string().max(200).optional(),
    alias: long.optional(),
    timestamp: instant,
    datatype: z.number().optional(),
    isHistorical: flag,
    isNull: flag,
    intValue: z.number().optional(),
    longValue: long.optional(),
    floatValue: z
      .number()
      .or(z.nan())
      .or(z.literal([Infinity, -Infinity]))
      .optional(),
    doubleValue: z
      .number()
      .or(z.nan())
      .or(z.literal([Infinity, -Infinity]))
      .optional(),
    booleanValue: z.boolean().optional(),
  })
  .transform(({ name, alias, timestamp, datatype, isHistorical, isNull, ...fields }): Metric => {
    const said = {
      ...(name === undefined ? {} : { name }),
      ...(alias === undefined ? {} : { alias }),
      ...(timestamp === undefined ? {} : { timestampMs: timestamp }),
      ...(datatype === undefined ? {} : { datatype }),
    };
    return { ...said, isHistorical, isNull, value: asValue(fields) };
  });

/** Fields that a value may come in. */
interface Fields {
  intValue?: number | undefined;
  longValue?: string | undefined;
  floatValue?: number | undefined;
  doubleValue?: number | undefined;
  booleanValue?: boolean | undefined;
}

function asValue({ intValue, longValue, floatValue, doubleValue, booleanValue }: Fields): MetricValue {
  if (intValue !== undefined) return { as: 'int', value: intValue };
  if (longValue !== undefined) return { as: 'long', value: BigInt(longValue) };
  if (floatValue !== undefined) return { as: 'float', value: floatValue };
  if (doubleValue !== undefined) return { as: 'double', value: doubleValue };
  if (booleanValue !== undefined) return { as: 'boolean', value: booleanValue };
  return { as: 'other' };
}

/** A payload of Sparkplug B as it comes out of the decoder, its long numbers in decimal. */
export const sparkplugPayload = z
  .object({ timestamp: instant, seq: long.transform(Number).optional(), metrics: z.array(metric).default([]) })
  .transform(
    ({ timestamp, seq, metrics }): SparkplugPayload => ({
      metrics,
      ...(timestamp === undefined ? {} : { timestampMs: timestamp }),
      ...(seq === undefined ? {} : { seq }),
    }),
  );
