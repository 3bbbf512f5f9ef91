import 'server-only';
import { resolve } from 'node:path';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { reviewPaper } from '#shape/reviews/review-paper';
import { callApart } from '../apart/call-apart';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { getDocument } from './get-document';

/** What draws it: the same words and drawings as the page, on paper. */
const PAPER = 'app/_ui/paper/review-paper.tsx';
/** ms that waiting for others and drawing may take together. */
const WITHIN_MS = 60_000;
/** Letters that hold what people write in: Latin, Greek, Cyrillic, arrows, signs of units. */
const FONTS = 'node_modules/dejavu-fonts-ttf/ttf';

export const printReviewShape = reviewPaper;

/** The review of a system as a PDF, drawn in a thread of its own. Its name holds keys and a day, and names nobody. */
export async function printReview(
  who: Who,
  { site, system, units }: z.output<typeof printReviewShape>,
): Promise<Result<{ name: string; file: Uint8Array }, Refusal>> {
  const found = await getDocument(who, { site, system }, 0);
  if (!found.ok) return found;
  const { facility, held, siteFindings, study } = found.value;
  if (!held) return refused({ why: 'not-found', what: 'review' });
  const job = { facility, system, siteFindings, study, ...held, units, at: now().toISOString(), fonts: fontFiles() };
  const file = await callApart(PAPER, job, WITHIN_MS);
  if (!(file instanceof Uint8Array)) throw new Error('the paper is no file');
  return ok({ name: `review-${site}-${system}-${held.origin.judgedOn}.pdf`, file });
}

function fontFiles(): { regular: string; bold: string } {
  const folder = resolve(/* turbopackIgnore: true */ process.cwd(), FONTS);
  return { regular: `${folder}/DejaVuSans.ttf`, bold: `${folder}/DejaVuSans-Bold.ttf` };
}
