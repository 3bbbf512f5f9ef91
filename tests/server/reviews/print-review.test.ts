import { getDocument as openPdf } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { reviewSystem } from '#core/review/review-system';
import { callApart } from '#server/apart/call-apart';
import { LOCAL_PERSON } from '#server/gate/who';
import { printReview, printReviewShape } from '#server/reviews/print-review';
import { reviewSite } from '#server/reviews/review-site';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

freshDatabase();

const NAME = 'Риф → 5 µm, 3 Ω, ≥ O₃';
const named = { ...smallSystem(), name: NAME };
/** Nobody is ever there: whatever does harm has a finding of its own. */
const SITE = { ...smallFacility(named), shifts: [], rounds: [] };
const at = printReviewShape.parse({ site: SITE.site.key, system: named.key });

/** The words of a PDF, sheet by sheet, as a reader finds them. */
async function wordsOf(file: Uint8Array): Promise<string[]> {
  const pdf = await openPdf({ data: new Uint8Array(file), verbosity: 0 }).promise;
  const sheets = Array.from({ length: pdf.numPages }, async (_, i) => {
    const { items } = await (await pdf.getPage(i + 1)).getTextContent();
    return items.map((item) => ('str' in item ? item.str : '')).join(' ');
  });
  return await Promise.all(sheets);
}

describe('the review on paper', () => {
  beforeAll(async () => {
    await keep(SITE);
    const compute = async () => await Promise.resolve(reviewSystem(SITE, named, '2026-06-01'));
    await reviewSite((await stored(at.site)).siteId, { compute });
  });

  test('is read back with every sign and every section, and numbers its sheets', async () => {
    const answer = await printReview(LOCAL_PERSON, at);
    if (!answer.ok) throw new Error(answer.reason.why);
    expect(answer.value.name).toMatch(/^review-[a-z0-9-]+-\d{4}-\d{2}-\d{2}\.pdf$/);
    const sheets = await wordsOf(answer.value.file);
    // The letter and the sign of a millionth are one drawing, which a reader takes for the letter.
    const words = sheets.join(' ').replace(/\s+/g, ' ').replaceAll('μ', 'µ');
    expect(words).toContain(`Review of ${NAME}`);
    const sections = ['What to fix first', 'Findings', 'More than one thing wrong', 'Fault cases', 'Not modelled'];
    for (const section of [...sections, 'Before any work', 'How to read this']) expect(words).toContain(section);
    expect(words).toContain('What would change it');
    // Drawn as lines and letters, not as a picture: the words of the plots are read as well.
    expect(words).toContain('Cover chart, hours to spare');
    expect(words).toContain('◇ last chance');
    expect(sheets.at(-1)).toContain(`Page ${sheets.length} of ${sheets.length}`);
  }, 60_000);

  test('that takes too long is given up, and the next one is drawn', async () => {
    const paper = 'app/_ui/paper/review-paper.tsx';
    await expect(callApart(paper, {}, 1)).rejects.toThrow();
    await expect(callApart(paper, {}, 30_000)).rejects.toThrow(/undefined/);
  }, 60_000);
});
