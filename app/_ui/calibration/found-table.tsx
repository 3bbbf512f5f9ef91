import type { Custom } from '#core/units/shown';
import { type Column, Ledger } from '../table/ledger';
import type { FitView } from './view';
import { amountSaid, FIELD_UNITS, FIELD_WORDS } from './words';

interface FoundTableProps {
  fit: FitView;
  units: Custom;
}

interface Row {
  of: string;
  found: string;
  interval: string;
  inUse: string;
  range: string;
}

/** What was found beside what is in use: of all the water that mixes, and of the one figure that can take it. */
export function FoundTable({ fit: { found, target }, units }: FoundTableProps) {
  if (!found) return null;
  const whole: Row = {
    of: 'All the water that mixes',
    found: amountSaid(units, found.unit, found.value),
    interval: `${amountSaid(units, found.unit, found.low)} to ${amountSaid(units, found.unit, found.high)}`,
    inUse: amountSaid(units, found.unit, found.inUse),
    range: '–',
  };
  const rows = [whole, ...(target ? [targetRow(target, units)] : [])];
  const columns: Column<Row>[] = [
    { id: 'of', head: 'Of', cell: ({ of }) => of },
    { id: 'found', head: 'Found', figure: true, cell: (row) => row.found },
    { id: 'interval', head: 'Interval (95 %)', figure: true, cell: (row) => row.interval },
    { id: 'in-use', head: 'In use', figure: true, cell: (row) => row.inUse },
    { id: 'range', head: 'Range in use', figure: true, cell: (row) => row.range },
  ];
  return (
    <Ledger caption="What the readings say, and what is in use." columns={columns} rows={rows} keyOf={({ of }) => of} />
  );
}

function targetRow(target: NonNullable<FitView['target']>, units: Custom): Row {
  const unit = FIELD_UNITS[target.field];
  const said = (value: number) => amountSaid(units, unit, value);
  const { rangeInUse } = target;
  return {
    of: `${target.name}: ${FIELD_WORDS[target.field]}`,
    found: said(target.value),
    interval: `${said(target.low)} to ${said(target.high)}`,
    inUse: said(target.inUse),
    range: rangeInUse ? `${said(rangeInUse.low)} to ${said(rangeInUse.high)}` : 'taken as exact',
  };
}

/** Part of the widest doubt below which another is not told: it changes no digit of the interval. */
const TELLING = 0.01;

/** What makes the interval as wide as it is, the widest first. */
export function DoubtTable({ fit: { found }, units }: FoundTableProps) {
  if (!found) return null;
  const widest = Math.max(...found.doubts.map(({ half }) => half));
  const rows = found.doubts.filter(({ half }) => half >= TELLING * widest).sort((a, b) => b.half - a.half);
  const columns: Column<(typeof rows)[number]>[] = [
    { id: 'from', head: 'Comes from', cell: ({ from }) => from },
    { id: 'half', head: 'By itself ±', figure: true, cell: ({ half }) => amountSaid(units, found.unit, half) },
  ];
  return (
    <Ledger
      narrow
      caption="What makes the interval as wide as it is. They are independent: the root of the sum of their squares is half of it."
      columns={columns}
      rows={rows}
      keyOf={({ from }) => from}
    />
  );
}

/** How what was found compares with what is in use, in a sentence. */
export function comparedSaid({ target, found }: FitView): string {
  if (!target || !found) return '';
  const { value, low, high, inUse, rangeInUse } = target;
  const ratio = Number((value / inUse).toPrecision(2));
  const within = inUse >= low && inUse <= high;
  const width = rangeInUse
    ? (high - low) / Math.max(1e-12, rangeInUse.high - rangeInUse.low)
    : Number.POSITIVE_INFINITY;
  return [
    `It is ${ratio} times the figure in use, which lies ${within ? 'within' : 'outside'} the interval.`,
    width < 1
      ? 'The interval is narrower than the range in use.'
      : 'The interval is wider than the range in use: taking it over makes the review less sure, and more honest only if the range in use was a guess.',
  ].join(' ');
}
