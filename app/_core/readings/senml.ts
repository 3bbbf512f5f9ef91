import { ok, refused } from '../result';
import type { ReadRecord } from './arrived';

/** Base fields of a SenML record, which hold for it and those after it until they are given anew (RFC 8428, 4.1). */
export interface SenmlBase {
  bn?: string | undefined;
  bt?: number | undefined;
  bu?: string | undefined;
  bv?: number | undefined;
  bs?: number | undefined;
}

/** The other fields of a SenML record (RFC 8428, 4.2). Times in s, numbers finite. */
export interface SenmlEntry {
  n?: string | undefined;
  u?: string | undefined;
  v?: number | undefined;
  vb?: boolean | undefined;
  vs?: string | undefined;
  vd?: string | undefined;
  s?: number | undefined;
  t?: number | undefined;
  /** The longest time until the sensor reports again. */
  ut?: number | undefined;
}

/** The version of SenML this understands (RFC 8428, 4.4). */
export const SENML_VERSION = 10;

/** A time below this many seconds is counted from now (RFC 8428, 4.5.3). */
const RELATIVE_BELOW_S = 2 ** 28;
/** RFC 8428, 4.5.1. */
const NAME = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/;
const LONGEST_NAME = 200;
const MS = 1000;

/**
 * What one record says, with the base fields that hold for it.
 *
 * @param base    base fields as they stand for this record
 * @param entry   its own fields
 * @param nowMs   the instant it was received, ms since 1970
 */
export function resolveRecord(base: SenmlBase, entry: SenmlEntry, nowMs: number): ReadRecord {
  const name = `${base.bn ?? ''}${entry.n ?? ''}`;
  if (name === '') return refused({ field: 'n', why: 'there is no name, neither in n nor in bn' });
  if (!NAME.test(name) || name.length > LONGEST_NAME)
    return refused({
      field: 'n',
      why: `a name has letters, digits and - : . / _, begins with a letter or digit, and has at most ${LONGEST_NAME} characters`,
    });
  const fault = valueFault(base, entry);
  if (fault) return refused({ ...fault, name });
  const unit = entry.u ?? base.bu;
  if (unit === '%')
    return refused({
      field: 'u',
      why: 'in SenML % is a ratio of which 1 is all: write /100 for hundredths, or / for the ratio',
      name,
    });
  const timeS = (base.bt ?? 0) + (entry.t ?? 0);
  const atMs = Math.round((timeS < RELATIVE_BELOW_S ? nowMs / MS + timeS : timeS) * MS);
  const value = entry.vb ?? (entry.v ?? 0) + (base.bv ?? 0);
  if (typeof value === 'number' && !Number.isFinite(value))
    return refused({ field: 'v', why: 'is too large a number', name });
  return ok({ name, atMs, value, ...(unit === undefined ? {} : { unit }) });
}

/** A record has exactly one value; what is no number and no yes or no is no reading, and a sum is of many. */
function valueFault(base: SenmlBase, { v, vb, vs, vd, s }: SenmlEntry): { field: string; why: string } | null {
  const given = Object.entries({ v, vb, vs, vd }).filter(([, value]) => value !== undefined);
  const [first, second] = given.map(([field]) => field);
  if (second !== undefined) return { field: second, why: `there is a value already, in ${first ?? ''}` };
  if (first === undefined && (s !== undefined || base.bs !== undefined))
    return { field: s === undefined ? 'bs' : 's', why: 'sums are not kept: send the readings themselves' };
  if (first === undefined) return { field: 'v', why: 'there is no value' };
  return first === 'vs' || first === 'vd' ? { field: first, why: 'is no number: only v and vb are readings' } : null;
}
