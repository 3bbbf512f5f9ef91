import { heldStudy } from '#core/review/study';
import { firstFix } from '#core/review/first-fix';
import { gravest } from '#core/review/gravest';
import { caseTitle } from '#core/review/words';
import { firstFixSaid } from '../../words/first-fix';
import { instantSaid } from '../../words/instant';
import { KIND_WORDS } from '../../words/kinds';
import { outcomeSaid } from '../../words/said';
import { type Block, type Part, text } from '../block';
import type { DocumentData } from '../document-data';
import { caseAddress } from './tell-case';

/** What the review comes to, in a few lines: the verdicts, the worst case, what to fix first. */
export function leadBlocks(data: DocumentData): Block[] {
  const { review, speech, at, facility, system, origin } = data;
  const [claimed, tested] = [gravest(review, 'claimed'), gravest(review, 'tested')];
  const worst = claimed.outcome ? claimed : tested;
  return [
    text(`${facility.site.name}, ${KIND_WORDS[system.kind]}. Tests judged on ${origin.judgedOn}.`),
    {
      kind: 'verdicts',
      claimed: claimed.verdict,
      tested: tested.verdict,
      befalls: { claimed: claimed.outcome?.harm.class, tested: tested.outcome?.harm.class },
      unsure: claimed.case?.unsure ?? false,
    },
    worst.case && worst.outcome
      ? text(
          'The worst fault case: ',
          { link: caseAddress(at, worst.case.id), says: caseTitle(worst.case) },
          `. ${outcomeSaid(speech, worst.outcome)}`,
        )
      : text('No single fault harms anything within seven days, though nobody comes.'),
    ...firstSaid(data),
  ];
}

/** The first thing to fix, from the longer look, else the first finding. */
function firstSaid(data: DocumentData): Block[] {
  const fix = firstFix(heldStudy(data.study));
  if (fix) return [text({ strong: 'What to fix first: ' }, firstFixSaid(fix))];
  const [finding] = data.review.findings;
  return finding ? [text({ strong: 'What to do first: ' }, `${finding.remedy}.`)] : [];
}

/** Who computed it, when and from what. */
export function madePart({ origin, facility }: DocumentData): Part {
  const { zone } = facility.site;
  return {
    id: 'made',
    title: 'Where this comes from',
    blocks: [
      {
        kind: 'list',
        items: [
          [`Computed by Holdfast on ${instantSaid(origin.computedAt, zone)} (${zone}).`],
          [`Engine ${origin.engineVersion}. Tests, times off and calibrations judged on ${origin.judgedOn}.`],
          [`From the description with the seal ${origin.inputHash.slice(0, 12)}: the same seal means the same inputs.`],
        ],
      },
    ],
  };
}
