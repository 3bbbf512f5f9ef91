import { beyondRate, type UsedRate } from '#core/rounds/rate';
import { rateSaid } from '#core/rounds/read/used';
import type { UsedLine } from '#core/rounds/used-lines';
import type { Custom } from '#core/units/shown';
import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import { usualSaid } from './rate-said';
import style from './rounds.module.css';

/** A line on which it is noted what was used, and what that comes to a day. */
export interface UseLine {
  line: UsedLine;
  rate: UsedRate | null;
}

interface UseSectionProps {
  use: readonly UseLine[];
  units: Custom;
  zone: string;
}

/** Rates before that are told. */
const TOLD = 5;

/** What a system uses a day, by what its rounds note; nothing where no line notes it. */
export function UseSection({ use, units, zone }: UseSectionProps) {
  const known = use.flatMap(({ line, rate }) => (rate ? [{ line, rate }] : []));
  if (use.length === 0) return null;
  const columns: Column<(typeof known)[number]>[] = [
    { id: 'what', head: 'Noted on the rounds', cell: ({ line }) => line.what },
    { id: 'rate', head: 'A day, of late', figure: true, cell: (row) => <Rate {...row} units={units} /> },
    { id: 'before', head: 'Before', figure: true, cell: ({ line, rate }) => beforeSaid(line, rate, units) },
    { id: 'usual', head: 'Usual', cell: ({ line, rate }) => usualSaid(line, rate, units) ?? 'not known yet' },
    { id: 'at', head: 'Until', cell: ({ rate }) => momentSaid(rate.atMs, zone) },
  ];
  return (
    <Section
      id="used"
      wide
      title="Used a day"
      note="Where nobody said what is usual: within twice and half the middle of the rounds before."
    >
      {known.length === 0 ? (
        <p>Not known yet: two rounds about a day apart have to note it.</p>
      ) : (
        <Ledger caption="By the rounds." columns={columns} rows={known} keyOf={({ line }) => line.key} />
      )}
    </Section>
  );
}

function Rate({ line, rate, units }: { line: UsedLine; rate: UsedRate; units: Custom }) {
  const trend = rate.trend === null ? '' : `, ${rate.trend}`;
  if (beyondRate(rate) === null) return `${rateSaid(line, units, rate.perDay)}${trend}`;
  return (
    <>
      <span aria-hidden="true" className={style.wrong}>
        ▲
      </span>{' '}
      <strong>
        {rateSaid(line, units, rate.perDay)}
        {trend}
      </strong>
    </>
  );
}

function beforeSaid(line: UsedLine, rate: UsedRate, units: Custom): string {
  const before = rate.before.slice(0, TOLD).reverse();
  return before.length === 0
    ? '–'
    : rateSaid(
        line,
        units,
        before.map(({ perDay }) => perDay),
      );
}
