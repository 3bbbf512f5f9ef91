import type { FaultCase, Judgement, Outcome } from '#core/review/result';
import { hourWords, worstHour } from '#core/review/words';
import { bareStretches, coverPoints } from '../../case/cover-points';
import { harmSaid, noticeSaid, type Speech, spareSaid } from '../../words/said';
import { lastingOrNever } from '../../words/lasting';
import type { Line, TableBlock } from '../block';

/** A fault case in its two columns, figure by figure, each at its own worst hour. */
export function bothColumns(faultCase: FaultCase, speech: Speech): TableBlock {
  return {
    kind: 'table',
    caption:
      'As claimed counts on every safeguard that is not off; as tested only on those whose last test worked and is not overdue.',
    columns: [
      { id: 'name', head: 'Figure' },
      { id: 'claimed', head: 'As claimed' },
      { id: 'tested', head: 'As tested' },
    ],
    rows: rowsOf(faultCase, speech),
  };
}

function rowsOf({ claimed, tested, unsure }: FaultCase, speech: Speech): TableBlock['rows'] {
  const both = (name: string, of: (judgement: Judgement) => Line) => ({
    key: name,
    cells: [[name], of(claimed), of(tested)],
  });
  const figure = (name: string, of: (outcome: Outcome, hour: number) => string) =>
    both(name, ({ outcomes: [outcome] }) => [outcome ? of(outcome, worstHour(outcome)) : 'no harm']);
  return [
    both('verdict', (judgement) => [
      {
        verdict: judgement.verdict,
        befalls: judgement.outcomes[0]?.harm.class,
        unsure: unsure && judgement === claimed,
      },
    ]),
    figure('harm', (o, h) => `${harmSaid(speech, o.harm)}, after ${lastingOrNever(o.harmS[h])}`),
    figure('to whom', (o) => o.harm.groups.join(', ') || 'no animals'),
    figure('worst hour to begin', (_, h) => hourWords(h)),
    figure('time to notice', (o, h) => noticed(speech, o, h)),
    figure('last chance', (o, h) => ((o.lastChanceS[h] ?? 0) < 1 ? 'none' : lastingOrNever(o.lastChanceS[h]))),
    figure('time to put right', (o, h) => lastingOrNever(o.putRightS[h])),
    figure('time to spare', (o, h) => spareSaid(o.spareS[h] ?? null)),
    figure('hours of the week with nothing to spare', (o) => `${bareHours(o)} of 168`),
    both('safeguards that acted', (judgement) => [judgement.acted.map(speech.names.safeguard).join(', ') || 'none']),
  ];
}

function noticed(speech: Speech, outcome: Outcome, hour: number): string {
  const after = outcome.noticeS[hour] ?? null;
  return after === null ? 'never' : `${lastingOrNever(after)}, ${noticeSaid(speech, outcome.noticeBy[hour])}`;
}

function bareHours(outcome: Outcome): number {
  return bareStretches(coverPoints(outcome)).reduce((sum, [, length]) => sum + length, 0);
}
