import type { FaultCase } from '#core/review/result';

interface CaseMarksProps {
  faultCase: Pick<FaultCase, 'unsure' | 'optimistic' | 'outsideValidity' | 'still' | 'bound'>;
  tankName: (key: string) => string;
}

/** The marks of a fault case in whole sentences; nothing when it has none. */
export function CaseMarks({ faultCase, tankName }: CaseMarksProps) {
  const { still = [] } = faultCase;
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
          <strong>Optimistic:</strong> {still.length > 0 ? still.map(tankName).join(', ') : 'a tank'} stands without
          movement on the way. The model takes it as well mixed, which flatters it: the truth is worse.
        </p>
      ) : null}
      {faultCase.bound ? (
        <p>
          <strong>A bound:</strong> nothing is reckoned to use up the oxidant that comes in, for its decay is not known.
          It may come to less.
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
