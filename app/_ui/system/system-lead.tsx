import Link from '../frame/link';
import type { FirstFix } from '#core/review/first-fix';
import type { SystemReview } from '#core/review/result';
import { gravest } from '#core/review/gravest';
import { caseTitle } from '#core/review/words';
import { VerdictLine } from '../marks/verdict-line';
import { firstFixSaid } from '../words/first-fix';
import { outcomeSaid, type Speech } from '../words/said';

interface SystemLeadProps {
  review: SystemReview;
  /** The change to make first; null while it is not known. */
  fix: FirstFix | null;
  speech: Speech;
  at: string;
}

/** What a review comes to, in a few lines: the verdicts, the worst case, what to do first. */
export function SystemLead({ review, fix, speech, at }: SystemLeadProps) {
  const claimed = gravest(review, 'claimed');
  const tested = gravest(review, 'tested');
  const worst = claimed.outcome ? claimed : tested;
  const [first] = review.findings;
  return (
    <>
      <VerdictLine
        claimed={{ verdict: claimed.verdict, befalls: claimed.outcome?.harm.class }}
        tested={{ verdict: tested.verdict, befalls: tested.outcome?.harm.class }}
        unsure={claimed.case?.unsure ?? false}
      />
      {worst.case && worst.outcome ? (
        <p>
          <Link href={`${at}/cases/${encodeURIComponent(worst.case.id)}`}>{caseTitle(worst.case)}</Link>.{' '}
          {outcomeSaid(speech, worst.outcome)}
        </p>
      ) : (
        <p>
          {claimed.case?.claimed.reason
            ? `Not assessed: ${claimed.case.claimed.reason}.`
            : 'No single fault harms anything within seven days, though nobody comes.'}
        </p>
      )}
      {fix ? (
        <p>
          <strong>What to fix first:</strong> <Link href={`${at}/review#fix-first`}>{firstFixSaid(fix)}</Link>
        </p>
      ) : first ? (
        <p>
          <strong>What to do first:</strong> {first.remedy}.
        </p>
      ) : null}
      <p>
        <Link href={`${at}/review`}>The whole review as a document</Link>
      </p>
    </>
  );
}
