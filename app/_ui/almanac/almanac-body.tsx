import type { AlmanacTable } from '#core/almanac/table';
import type { Custom } from '#core/units/shown';
import laws from '#core/water/sources.json';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { LAW_COLUMNS } from '../how/columns';
import { Ledger } from '../table/ledger';
import style from './almanac.module.css';
import { RuledSheet } from './ruled-sheet';

/** One page of the almanac: what it is for, its tables, and what they rest on. */
export function AlmanacBody({ table, units }: { table: AlmanacTable; units: Custom }) {
  const rests = laws.filter(({ law }) => table.laws.includes(law));
  return (
    <Page
      title={table.title}
      over={[{ href: '/almanac', name: 'Almanac' }]}
      lead={
        <>
          <p>{table.use}</p>
          {table.caution ? (
            <p className={style.caution}>
              <strong>Take care.</strong> {table.caution}
            </p>
          ) : null}
          <p className={style.without}>Leaves out: {table.leavesOut}</p>
        </>
      }
    >
      {table.sheets(units).map((sheet) => (
        <div key={sheet.id} id={sheet.id} className={sheet.words ? style.sheet : `${style.sheet} ${style.figures}`}>
          <RuledSheet sheet={sheet} />
        </div>
      ))}
      {rests.length > 0 ? (
        <Section
          id="laws"
          wide
          title="What it rests on"
          note="A cell with a dash lies beyond the range that was published, or cannot be."
        >
          <Ledger caption="Laws, ranges and sources" columns={LAW_COLUMNS} rows={rests} keyOf={({ law }) => law} />
        </Section>
      ) : null}
    </Page>
  );
}
