import { caseMarks } from '#core/review/case-marks';
import Link from '../frame/link';
import type { FaultCase, Outcome } from '#core/review/result';
import { gravity } from '#core/review/verdict';
import { caseTitle, worstHour } from '#core/review/words';
import { Fold } from '../frame/fold';
import { VerdictMark } from '../marks/verdict';
import { type Column, Ledger } from '../table/ledger';
import { harmSaid, type Speech, spareSaid } from '../words/said';
import { lastingOrNever } from '../words/lasting';
import style from './cases.module.css';

interface CasesProps {
  cases: FaultCase[];
  speech: Speech;
  /** Address of the system's page. */
  at: string;
}

/** Every fault case in both columns, gravest first; those that harm nothing are folded. */
export function CasesTable({ cases, speech, at }: CasesProps) {
  const quiet = (c: FaultCase) => Math.min(gravity(c.claimed.verdict), gravity(c.tested.verdict)) > gravity('covered');
  const grave = cases.filter((c) => !quiet(c));
  const rest = cases.filter(quiet);
  return (
    <>
      {grave.length > 0 ? (
        <Table
          cases={grave}
          speech={speech}
          at={at}
          caption="Each figure is that of the gravest harm, as claimed, at its worst hour of the week."
        />
      ) : (
        <p>No fault case harms anything.</p>
      )}
      {rest.length > 0 ? (
        <Fold title={`${rest.length} fault cases that hold or are dormant`}>
          <Table cases={rest} speech={speech} at={at} caption="No harm within seven days though nobody comes." />
        </Fold>
      ) : null}
    </>
  );
}

function Table({ cases, speech, at, caption }: CasesProps & { caption: string }) {
  const figure = (of: (outcome: Outcome, hour: number) => string) => (c: FaultCase) => {
    const [outcome] = c.claimed.outcomes;
    return outcome ? of(outcome, worstHour(outcome)) : '–';
  };
  const columns: Column<FaultCase>[] = [
    {
      id: 'case',
      head: 'Fault case',
      cell: (c) => <Link href={`${at}/cases/${encodeURIComponent(c.id)}`}>{caseTitle(c)}</Link>,
    },
    {
      id: 'claimed',
      head: 'As claimed',
      cell: (c) => <VerdictMark verdict={c.claimed.verdict} of={c.claimed.outcomes[0]?.harm.class} />,
    },
    {
      id: 'tested',
      head: 'As tested',
      cell: (c) => <VerdictMark verdict={c.tested.verdict} of={c.tested.outcomes[0]?.harm.class} />,
    },
    {
      id: 'harm',
      head: 'Harm',
      cell: figure((o, h) => `${harmSaid(speech, o.harm)}, after ${lastingOrNever(o.harmS[h])}`),
    },
    { id: 'notice', head: 'Noticed', figure: true, cell: figure((o, h) => lastingOrNever(o.noticeS[h])) },
    {
      id: 'last',
      head: 'Last chance',
      figure: true,
      cell: figure((o, h) => ((o.lastChanceS[h] ?? 0) < 1 ? 'none' : lastingOrNever(o.lastChanceS[h]))),
    },
    { id: 'right', head: 'Put right', figure: true, cell: figure((o, h) => lastingOrNever(o.putRightS[h])) },
    { id: 'spare', head: 'To spare', figure: true, cell: figure((o, h) => spareSaid(o.spareS[h] ?? null)) },
    { id: 'marks', head: 'Marks', cell: (c) => <span className={style.marks}>{caseMarks(c) || '–'}</span> },
  ];
  return <Ledger caption={caption} columns={columns} rows={cases} keyOf={(c) => c.id} />;
}
