import type { ReactNode } from 'react';
import type { FaultCase, Judgement, Outcome } from '#core/review/result';
import { hourWords, worstHour } from '#core/review/words';
import { VerdictMark } from '../marks/verdict';
import { type Column, Ledger } from '../table/ledger';
import { harmSaid, noticeSaid, type Speech, spareSaid } from '../words/said';
import { lastingOrNever } from '../words/lasting';
import { bareStretches, coverPoints } from './cover-points';

interface Line {
  name: string;
  claimed: ReactNode;
  tested: ReactNode;
}

/** A fault case in its two columns, figure by figure, each at its own worst hour. */
export function BothColumns({ faultCase, speech }: { faultCase: FaultCase; speech: Speech }) {
  const columns: Column<Line>[] = [
    { id: 'name', head: 'Figure', cell: (line) => line.name },
    { id: 'claimed', head: 'As claimed', cell: (line) => line.claimed },
    { id: 'tested', head: 'As tested', cell: (line) => line.tested },
  ];
  const rows = linesOf(faultCase, speech);
  return (
    <Ledger
      caption="As claimed counts on every safeguard that is not off; as tested only on those whose last test worked and is not overdue."
      columns={columns}
      rows={rows}
      keyOf={(line) => line.name}
    />
  );
}

function linesOf({ claimed, tested, unsure }: FaultCase, speech: Speech): Line[] {
  const both = (name: string, of: (judgement: Judgement) => ReactNode): Line => ({
    name,
    claimed: of(claimed),
    tested: of(tested),
  });
  const figure = (name: string, of: (outcome: Outcome, hour: number) => ReactNode) =>
    both(name, ({ outcomes: [outcome] }) => (outcome ? of(outcome, worstHour(outcome)) : 'no harm'));
  return [
    both('verdict', (judgement) => (
      <VerdictMark
        verdict={judgement.verdict}
        of={judgement.outcomes[0]?.harm.class}
        unsure={unsure && judgement === claimed}
      />
    )),
    figure('harm', (o, h) => `${harmSaid(speech, o.harm)}, after ${lastingOrNever(o.harmS[h])}`),
    figure('worst hour to begin', (_, h) => hourWords(h)),
    figure('time to notice', (o, h) =>
      (o.noticeS[h] ?? null) === null
        ? 'never'
        : `${lastingOrNever(o.noticeS[h])}, ${noticeSaid(speech, o.noticeBy[h])}`,
    ),
    figure('last chance', (o, h) => ((o.lastChanceS[h] ?? 0) < 1 ? 'none' : lastingOrNever(o.lastChanceS[h]))),
    figure('time to put right', (o, h) => lastingOrNever(o.putRightS[h])),
    figure('time to spare', (o, h) => spareSaid(o.spareS[h] ?? null)),
    figure(
      'hours of the week with nothing to spare',
      (o) => `${bareStretches(coverPoints(o)).reduce((sum, [, n]) => sum + n, 0)} of 168`,
    ),
    both('safeguards that acted', (judgement) => judgement.acted.map(speech.names.safeguard).join(', ') || 'none'),
  ];
}
