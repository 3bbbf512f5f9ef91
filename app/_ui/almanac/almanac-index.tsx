import Link from '../frame/link';
import { CHAPTERS } from '#core/almanac/catalogue';
import type { AlmanacTable } from '#core/almanac/table';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';

const COLUMNS: Column<AlmanacTable>[] = [
  { id: 'table', head: 'Table', cell: ({ id, title }) => <Link href={`/almanac/${id}`}>{title}</Link> },
  { id: 'use', head: 'What it is for', cell: ({ use }) => use },
];

/** Every table of the almanac with what it is for. */
export function AlmanacIndex() {
  return (
    <Page
      title="Almanac"
      lead={
        <>
          <p>Tables to read and to print, made by the same laws that reckon a review, in your units.</p>
          <p>
            Every table names its sources. The laws themselves, with the ranges they were published for, are listed
            under <Link href="/how#laws">How this is computed</Link>.
          </p>
        </>
      }
    >
      {CHAPTERS.map(({ id, title, tables }) => (
        <Section key={id} id={id} title={title}>
          <Ledger caption={`${title}: tables`} columns={COLUMNS} rows={[...tables]} keyOf={(one) => one.id} />
        </Section>
      ))}
    </Page>
  );
}
