import fc from 'fast-check';
import protobuf from 'protobufjs';
import { get } from 'sparkplug-payload';
import { describe, expect, test } from 'vitest';
import { readingOf } from '#core/readings/sparkplug/metric';
import { decodeSparkplug, encodeRebirth } from '#server/mqtt/sparkplug/decode';

// Payloads are encoded by `sparkplug-payload` of Eclipse Tahu, which knows nothing of what reads them here.
const codec = get('spBv1.0');
/** 64 bits as the library takes them. */
function long(value: bigint, isUnsigned = false): unknown {
  const bits = BigInt.asUintN(64, value);
  return new protobuf.util.LongBits(Number(bits & 0xffffffffn), Number(bits >> 32n)).toLong(isUnsigned);
}

if (!codec) throw new Error('The library knows no Sparkplug B.');
const { encodePayload, decodePayload } = codec;
type Encoded = Parameters<typeof encodePayload>[0];

function decoded(payload: Encoded) {
  const read = decodeSparkplug(encodePayload(payload));
  if (!read.ok) throw new Error(read.reason);
  return read.value;
}

const one = (type: string, value: unknown) => {
  const [metric] = decoded({ metrics: [{ name: 'm', type, value } as never] }).metrics;
  return metric ? readingOf(metric) : undefined;
};

describe('a payload that another library encoded', () => {
  test.each([
    ['Int8', -5, -5],
    ['Int16', -300, -300],
    ['Int32', -70_000, -70_000],
    ['Int64', long(-9007199254740991n), -9007199254740991],
    ['UInt8', 200, 200],
    ['UInt32', 4_000_000_000, 4_000_000_000],
    ['UInt64', long(12345678901n, true), 12345678901],
    ['Float', 25.3, 25.3],
    ['Double', 25.31, 25.31],
    ['Boolean', true, true],
    ['Boolean', false, false],
    ['String', 'x', null],
    ['DateTime', long(1_790_000_000_000n), 1_790_000_000_000],
  ])('holds %s %s', (type, value, expected) => {
    expect(one(type, value)).toBe(expected);
  });

  test('holds its sequence, times, aliases, types and marks', () => {
    const payload = decoded({
      timestamp: 1_790_000_000_123,
      seq: 255,
      metrics: [
        { name: 'temperature', alias: 7, type: 'Double', value: 25, timestamp: 1_790_000_000_001, isHistorical: true },
        { name: 'nothing', type: 'Double', value: null, isNull: true },
      ],
    } as never);
    expect(payload).toEqual({
      timestampMs: 1_790_000_000_123,
      seq: 255,
      metrics: [
        {
          name: 'temperature',
          alias: '7',
          datatype: 10,
          timestampMs: 1_790_000_000_001,
          isHistorical: true,
          isNull: false,
          value: { as: 'double', value: 25 },
        },
        { name: 'nothing', datatype: 10, isHistorical: false, isNull: true, value: { as: 'other' } },
      ],
    });
  });

  test('keeps an alias of 64 bits to its last digit', () => {
    const alias = long(2n ** 64n - 1n, true);
    expect(decoded({ metrics: [{ alias, type: 'Double', value: 1 } as never] }).metrics[0]?.alias).toBe(
      '18446744073709551615',
    );
  });

  test('holds any double as it was', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(one('Double', value)).toBe(value);
      }),
      { numRuns: 100 },
    );
  });
});

test('whatever bytes come, they are understood or refused, and nothing breaks', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(typeof decodeSparkplug(bytes).ok).toBe('boolean');
    }),
    { numRuns: 500 },
  );
  const whole = encodePayload({ seq: 1, metrics: [{ name: 'm', type: 'Double', value: 1 }] } as never);
  for (let bytes = 1; bytes < whole.length; bytes++) decodeSparkplug(whole.subarray(0, bytes));
  expect(decodeSparkplug(new Uint8Array([0x12, 0xff, 0xff, 0xff, 0xff, 0x0f]))).toMatchObject({ ok: false });
});

test('a request to be born again is one that the other library reads', () => {
  const { metrics } = decodePayload(encodeRebirth(1_790_000_000_000));
  expect(metrics).toMatchObject([{ name: 'Node Control/Rebirth', type: 'Boolean', value: true }]);
});
