import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { fileRequest } from '#shape/facility/file-request';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { compareWithStored, type ImportPreview } from './compare';
import { readFile } from './read-file';

export const previewImportShape = fileRequest;

/** A dry run of an import: every fault of the file, or what it would change. Nothing is stored. */
export async function previewImport(
  who: Who,
  { text, format }: z.output<typeof previewImportShape>,
): Promise<Result<ImportPreview, Refusal>> {
  const read = readFile(text, format, now());
  if (!read.ok) return read;
  if (!may(who, 'import', read.value.site.key)) return refused({ why: 'not-allowed' });
  return ok(await compareWithStored(read.value));
}
