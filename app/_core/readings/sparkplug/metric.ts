/** A value of a Sparkplug payload as it was decoded. */
export interface Metric {
  /** Absent where an alias stands for it. */
  name?: string;
  /** In decimal: it has 64 bits. */
  alias?: string;
  /** ms since 1970. */
  timestampMs?: number;
  /** Index of the data type; a birth says it, data need not. */
  datatype?: number;
  /** Whether it is of the past, sent once the line was back: for the record, and calls nobody. */
  isHistorical: boolean;
  isNull: boolean;
  value: MetricValue;
}

/** The field the value came in. */
export type MetricValue =
  | { as: 'int'; value: number }
  | { as: 'long'; value: bigint }
  | { as: 'float' | 'double'; value: number }
  | { as: 'boolean'; value: boolean }
  | { as: 'other' };

/** A Sparkplug payload. */
export interface SparkplugPayload {
  timestampMs?: number;
  /** 0 to 255; absent in the death of a node. */
  seq?: number;
  metrics: Metric[];
}

/** Indices of data types (Sparkplug 3.0, 6.4.16; from memory), with the bits of those that are signed. */
const SIGNED_BITS: Readonly<Record<number, number>> = { 1: 8, 2: 16, 3: 32, 4: 64 };

/**
 * The value as a reading.
 *
 * @param datatype   as its birth said it, where it says none itself
 * @returns          a finite number, or true or false; null for what is null, a text, a table or endless
 */
export function readingOf({ isNull, value, datatype: own }: Metric, datatype?: number): number | boolean | null {
  if (isNull) return null;
  switch (value.as) {
    case 'boolean':
      return value.value;
    case 'int':
    case 'long':
      return Number(signed(BigInt(value.value), SIGNED_BITS[own ?? datatype ?? 0]));
    case 'float':
      return finite(shortest(value.value));
    case 'double':
      return finite(value.value);
    case 'other':
      return null;
  }
}

/** Signed numbers are sent as the unsigned ones of the same bits. */
function signed(value: bigint, bits: number | undefined): bigint {
  return bits === undefined ? value : BigInt.asIntN(bits, value);
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** The shortest decimal that is this number in 32 bits: a gateway that read 25.3 sent 25.299999237…, and meant 25.3. */
function shortest(value: number): number {
  for (let digits = 6; digits < 9; digits++) {
    const said = Number(value.toPrecision(digits));
    if (Math.fround(said) === value) return said;
  }
  return value;
}
