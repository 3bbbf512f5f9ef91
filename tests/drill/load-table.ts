import type { Sent } from './gateway';
import { type Count, quantile } from './load-count';

/** What a stretch of the load came to. */
export interface Stretch extends Pick<Sent, 'again' | 'tookMs'> {
  key: string;
  count: Count;
  /** s it was sent for. */
  tookS: number;
  /** Most memory of each process, MiB. */
  peaks: Record<string, number>;
}

/** A figure of a stretch. */
type Row = [words: string, said: (stretch: Stretch) => string];

const ROWS: Row[] = [
  ['sent for, s', ({ tookS }) => tookS.toFixed(0)],
  ['readings answered as stored', ({ count }) => String(count.answered)],
  ['a second', ({ count, tookS }) => (count.answered / tookS).toFixed(0)],
  ['missing', ({ count }) => String(count.missing.length)],
  ['stored twice', ({ count }) => String(count.twice)],
  ['bodies sent again', ({ again }) => String(again)],
  ['body answered, ms, 50th and 99th', ({ tookMs }) => both(tookMs, 0)],
  ['alarms called for', ({ count }) => String(count.crossings)],
  ['missed', ({ count }) => String(count.missed.length)],
  ['raised twice', ({ count }) => String(count.doubled.length)],
  ['raised for nothing', ({ count }) => String(count.strange)],
  ['batches not judged', ({ count }) => String(count.waiting)],
  ['arrival to raised, s, 50th and 99th', ({ count }) => both(count.raisedS, 2)],
  ['arrival to the last page, s, 50th and 99th', ({ count }) => both(count.toldS, 2)],
  ['memory of web, at most, MiB', ({ peaks }) => (peaks.web ?? Number.NaN).toFixed(0)],
  ['memory of worker, at most, MiB', ({ peaks }) => (peaks.worker ?? Number.NaN).toFixed(0)],
];

/** Stretches side by side, as lines of a table in Markdown. */
export function tableOf(stretches: readonly Stretch[]): string[] {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    line(['', ...stretches.map(({ key }) => key)]),
    line(['---', ...stretches.map(() => '---:')]),
    ...ROWS.map(([words, said]) => line([words, ...stretches.map(said)])),
  ];
}

function both(values: readonly number[], digits: number): string {
  return [0.5, 0.99].map((part) => quantile(values, part).toFixed(digits)).join(', ');
}
