import type { ReactNode } from 'react';
import { DEED_WORDS } from '#core/incidents/words';
import { Fold } from '../frame/fold';
import { type Column, Ledger } from '../table/ledger';
import { SAFEGUARD_WORDS } from '../safeguards/safeguard-view';
import style from './incidents.module.css';
import type { DeedView } from './investigation-view';

interface DeedProps {
  page: { safeguards: DeedView[] };
  /** The form that says what a safeguard did; null for those who may not. */
  form: ((deed: DeedView) => ReactNode) | null;
}

/** One line a safeguard: how it stood then, and what it did, with the evidence. */
export function DeedTable({ page: { safeguards }, form }: DeedProps) {
  if (safeguards.length === 0)
    return <p>No safeguard was described that this system could lean on: that is a finding by itself.</p>;
  const columns: Column<DeedView>[] = [
    {
      id: 'name',
      head: 'Safeguard',
      cell: ({ name, kind, isOfSite }) => (
        <>
          {name}
          <span className={style.about}>
            {SAFEGUARD_WORDS[kind]}
            {isOfSite ? ', of the site' : ''}
          </span>
        </>
      ),
    },
    { id: 'then', head: 'When the fault began', cell: (deed) => <Then deed={deed} /> },
    { id: 'did', head: 'What it did', cell: ({ found }) => (found ? <Did found={found} /> : 'not said yet') },
  ];
  if (form)
    columns.push({
      id: 'say',
      head: 'Say it',
      cell: (deed) => <Fold title={deed.found ? 'Say it anew' : 'Say what it did'}>{form(deed)}</Fold>,
    });
  return (
    <Ledger
      caption="A safeguard that was not tested within its interval counted as absent in the column “as tested”."
      columns={columns}
      rows={safeguards}
      keyOf={({ id }) => id}
    />
  );
}

function Then({ deed: { state, last, why } }: { deed: DeedView }) {
  const test = last ? `last test ${last.on}, ${last.result}` : 'never tested';
  return (
    <>
      {state === 'tested' ? state : <strong>{state}</strong>}
      {why ? `: ${why}` : ''}, {test}
    </>
  );
}

function Did({ found: { did, evidence } }: { found: NonNullable<DeedView['found']> }) {
  return (
    <>
      {did === 'worked' || did === 'not-made-for-this' ? (
        DEED_WORDS[did]
      ) : (
        <>
          <span aria-hidden="true" className={style.mark}>
            ▲
          </span>{' '}
          <strong>{DEED_WORDS[did]}</strong>
        </>
      )}
      . <span className={style.said}>{evidence}</span>
    </>
  );
}
