import type { FaultCase } from '#core/review/result';

/** The marks of a fault case in whole sentences; nothing when it has none. */
export function CaseMarks({ faultCase }: { faultCase: Pick<FaultCase, 'unsure' | 'optimistic' | 'outsideValidity'> }) {
  return (
    <>
      {faultCase.unsure ? (
        <p>
          <strong>Unsure:</strong> the plausible range of what was entered or filled in, taken on the bad side, would
          change this verdict.
        </p>
      ) : null}
      {faultCase.optimistic ? (
        <p>
          <strong>Optimistic:</strong> a tank stands without movement on the way. The model takes it as well mixed,
          which flatters it: the truth is worse.
        </p>
      ) : null}
      {faultCase.outsideValidity ? (
        <p>
          <strong>Outside validity:</strong> a formula was used beyond the range it was published for.
        </p>
      ) : null}
    </>
  );
}
