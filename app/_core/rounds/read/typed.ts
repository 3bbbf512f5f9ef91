import { ok, type Result, refused } from '../../result';
import type { EntryValue } from '../entry';

/** What a person typed on a line, as the fields hold it. */
export interface TypedLine {
  units: 'metric' | 'us';
  number?: string | undefined;
  option?: string | undefined;
  text?: string | undefined;
  /** Ids of photos, parted by commas. */
  photos?: string | undefined;
  /** Of lines that ask for several numbers, each by its name. */
  figures: Readonly<Record<string, string>>;
  seen?: string | undefined;
}

/** What is wrong with a field. */
export interface TypedFault {
  path: string;
  message: string;
}

/** What was typed, as it is to be kept; and what the person is asked before it is, unless they have said it is so. */
export interface ReadLine {
  value: EntryValue | null;
  question: string | null;
}

export type Read = Result<ReadLine, TypedFault[]>;

/** Digits after the point that are kept of a number that was converted. */
const KEPT_DIGITS = 6;

/** A number as people write it: with a point or a comma before the decimals, and spaces where they like. */
export function typedNumber(text: string | undefined, path = 'number'): Result<number, TypedFault[]> {
  if (text === undefined) return wrong(path, 'must be a number');
  const plain = text.replace(/\s/g, '').replace(/^\u2212/, '-');
  const written = /^-?\d+,\d+$/.test(plain) ? plain.replace(',', '.') : plain;
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(written) || !Number.isFinite(Number(written)))
    return wrong(path, 'must be a number, such as 24.5');
  return ok(Number(written));
}

/** A number without the dust that a conversion leaves. */
export function tidy(value: number): number {
  return Number(value.toFixed(KEPT_DIGITS));
}

/** The one thing that is wrong. */
export function wrong(path: string, message: string): Result<never, TypedFault[]> {
  return refused([{ path, message }]);
}

/** What was read, with all that is asked first. */
export function readAs(value: EntryValue, questions: readonly (string | null)[] = []): Read {
  const asked = questions.filter((one) => one !== null);
  return ok({ value, question: asked.length > 0 ? asked.join(' ') : null });
}
