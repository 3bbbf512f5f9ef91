import type { ByTwo } from '#core/rounds/by-two';
import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import { KeptForm } from '../safeguards/kept-form';
import { NoteField } from './note-field';
import type { RoundView } from './round-view';

/** What somebody else signs, and who that may be: said before the first signature as well. */
export function byTwoSaid({ lines, by }: ByTwo): string {
  const what = lines.length === 0 ? 'Two sign this round' : `Two sign this round for: ${lines.join('; ')}`;
  const role = by === null ? '' : ` One of the two has to be a ${by}, or above.`;
  return `${what}. Whoever walked it signs first; somebody else looks, and signs second, here or on their own telephone.${role}`;
}

/** The second signature of a round, where its sheet asks for one. */
export function SecondSignature({ page: { site, round, self, isSigner }, sign }: SecondSignatureProps) {
  if (round.byTwo === null || round.signed === null || round.second !== null) return null;
  return (
    <Section id="second" title="Second signature" note={byTwoSaid(round.byTwo)}>
      {isSigner ? (
        <p>You have signed it. It waits for somebody else.</p>
      ) : (
        <KeptForm
          action={sign}
          hidden={{ site: site.key, round: round.id }}
          button={`I have looked: sign as the second, ${self}`}
          done="It is signed by two."
        >
          <NoteField name="note" title="What you saw (may stay empty)" />
        </KeptForm>
      )}
    </Section>
  );
}

interface SecondSignatureProps {
  page: RoundView;
  sign: FormAction<unknown>;
}
