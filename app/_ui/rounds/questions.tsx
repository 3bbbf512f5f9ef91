import { QUANTITY_WORDS } from '../readings/words';
import { momentSaid } from '../words/moment';
import type { LineView, RoundView } from './round-view';

interface QuestionsProps {
  page: RoundView;
  lines: (LineView & { place: string })[];
}

/** What is asked about a round, and accuses nobody. */
export function Questions({ page: { quick, alike, unmoved, site }, lines }: QuestionsProps) {
  const still = unmoved.flatMap((one) =>
    lines.filter(({ check }) => check.key === one.line).map((line) => ({ line, one })),
  );
  const same = lines.filter(
    ({ check }) => alike.includes(check.key) && !unmoved.some(({ line }) => line === check.key),
  );
  return (
    <>
      {quick === null ? null : (
        <>
          <h3>Entered faster than it is walked: was it written down on the way, and entered afterwards?</h3>
          <p>
            {quick.places} places in {Math.round(quick.tookS)} s; the way between them takes {quick.leastS} s at the
            least.
          </p>
        </>
      )}
      {still.length === 0 ? null : (
        <>
          <h3>Hardly moved in a week: does the instrument hang, or was the last value taken over?</h3>
          <p>
            Each lies within one step of its instrument, while its own sensor, or the weeks before, moved by more than
            that.
          </p>
          <ul>
            {still.map(({ line: { check, place }, one: { quantity, many, fromMs } }) => (
              <li key={`${check.key} ${quantity ?? ''}`}>
                {place}: {check.what}
                {check.kind === 'water-test' && quantity !== null ? `, ${QUANTITY_WORDS[quantity]}` : null}: {many}{' '}
                entries since {momentSaid(fromMs, site.zone)}
              </li>
            ))}
          </ul>
        </>
      )}
      <Same lines={same} />
    </>
  );
}

function Same({ lines }: Pick<QuestionsProps, 'lines'>) {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>The same to the last digit as on the three rounds before: was it read, or copied?</h3>
      <ul>
        {lines.map(({ check, place }) => (
          <li key={check.key}>
            {place}: {check.what}
          </li>
        ))}
      </ul>
    </>
  );
}
