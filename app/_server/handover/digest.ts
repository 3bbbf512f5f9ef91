import 'server-only';
import { createHash } from 'node:crypto';
import type { Shown } from '#core/handover/shown';
import { canonicalText } from '#data/canonical';

/** SHA-256 of what was shown, in hex: the same lines have the same one, whatever order their fields are in. */
export function digestOf(shown: Shown): string {
  return createHash('sha256').update(canonicalText(shown)).digest('hex');
}
