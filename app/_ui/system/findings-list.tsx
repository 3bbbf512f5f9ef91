import Link from '../frame/link';
import type { FaultCase, Finding, FindingLine, Outcome, SystemReview } from '#core/review/result';
import { VERDICT_WORDS } from '#core/review/words';
import { Fold } from '../frame/fold';
import { figure } from '../units/figures';
import { harmAtWorst, type Speech } from '../words/said';
import { cautionsFor } from './cautions-for';
import style from './findings.module.css';

/** Findings that are read in full; the rest is folded. */
const OPEN = 3;
/** Lines of a finding that are read in full. */
const LINES = 1;

/** Findings that are dealt with where the safeguards are. */
const ABOUT_SAFEGUARDS: ReadonlySet<string> = new Set(['do:test-safeguards', 'do:safeguard-back']);

interface FindingsProps {
  findings: Finding[];
  review: SystemReview | null;
  speech: Speech;
  /** Address of the system's page. */
  at: string;
}

/** What to do, most urgent first: three jobs in full, the rest folded. */
export function FindingsList(props: FindingsProps) {
  const { findings } = props;
  const rest = findings.slice(OPEN);
  return (
    <>
      <ol className={style.findings}>
        {findings.slice(0, OPEN).map((finding, i) => (
          <FindingEntry key={finding.id} {...props} finding={finding} number={i + 1} />
        ))}
      </ol>
      {rest.length > 0 ? (
        <Fold title={`${rest.length} more findings`}>
          <ol className={style.findings} start={OPEN + 1}>
            {rest.map((finding, i) => (
              <FindingEntry key={finding.id} {...props} finding={finding} number={OPEN + i + 1} />
            ))}
          </ol>
        </Fold>
      ) : null}
    </>
  );
}

function FindingEntry({ finding, number, ...props }: FindingsProps & { finding: Finding; number: number }) {
  const { lines } = finding;
  const rest = lines.slice(LINES);
  return (
    <li className={style.finding}>
      <div className={style.rank}>
        <span className={style.number}>{number}</span>
        <span data-grade={finding.grade} className={style.grade}>
          {finding.grade}
        </span>
      </div>
      <div>
        <h3>{finding.remedy}</h3>
        {ABOUT_SAFEGUARDS.has(finding.id) ? (
          <p>
            <Link href={props.at.replace(/\/systems\/.*$/, '/safeguards')}>Safeguards and their tests</Link>
          </p>
        ) : null}
        {lines.slice(0, LINES).map((line) => (
          <Line key={`${line.cause}${line.consequence}`} line={line} {...props} />
        ))}
        {rest.length > 0 ? (
          <Fold title={`and ${rest.length} more`}>
            {rest.map((line) => (
              <Line key={`${line.cause}${line.consequence}`} line={line} {...props} />
            ))}
          </Fold>
        ) : null}
        <BeforeThisWork finding={finding} />
      </div>
    </li>
  );
}

/** What can hurt somebody in the work that a finding asks for. */
function BeforeThisWork({ finding }: { finding: Finding }) {
  const said = cautionsFor(finding);
  if (said.length === 0) return null;
  return (
    <Fold title="Before this work">
      <ul>
        {said.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Fold>
  );
}

/** The outcome whose figures a line tells: of the class of harm that bears the line's verdict. */
function toldBy({ figures }: FindingLine, found: FaultCase | undefined): Outcome | undefined {
  const verdict = figures.find(({ name }) => name === 'verdict')?.value;
  const all = [...(found?.claimed.outcomes ?? []), ...(found?.tested.outcomes ?? [])];
  return all.find((outcome) => VERDICT_WORDS[outcome.verdict] === verdict) ?? all[0];
}

function Line({ line, review, speech, at }: Omit<FindingsProps, 'findings'> & { line: FindingLine }) {
  const { from } = line;
  const id = 'case' in from ? from.case : null;
  const outcome = toldBy(
    line,
    review?.cases.find((c) => c.id === id),
  );
  return (
    <div className={style.line}>
      <p>
        {id === null ? (
          <strong>{line.cause}</strong>
        ) : (
          <Link href={`${at}/cases/${encodeURIComponent(id)}`}>{line.cause}</Link>
        )}
        {'. '}
        {outcome ? harmAtWorst(speech, outcome) : line.consequence}
      </p>
      <ul className={style.figures} aria-label="Figures">
        {line.figures.map(({ name, value, measure }) => (
          <li key={name}>
            {name} <b>{measure ? figure(speech.units, measure.kind, measure.value) : value}</b>
          </li>
        ))}
        <li>source: {line.source}</li>
      </ul>
    </div>
  );
}
