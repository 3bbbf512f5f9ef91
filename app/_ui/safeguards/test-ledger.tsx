import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { TextField } from './fields';
import { KeptForm } from './kept-form';
import type { SafeguardView, TestView } from './safeguard-view';
import style from './safeguards.module.css';

/** Every test of a safeguard, the latest first; one that was withdrawn stays, struck out. */
export function TestLedger({ page, withdraw }: { page: SafeguardView; withdraw: FormAction<unknown> }) {
  const { ledger, site } = page;
  if (ledger.length === 0) return <p>It has never been tested.</p>;
  return (
    <Ledger
      caption={`Rows are added and never changed. Times are those of ${site.zone}.`}
      columns={columnsFor(page, withdraw)}
      rows={ledger}
      keyOf={({ id }) => id}
    />
  );
}

function columnsFor({ site, place, mayTest }: SafeguardView, withdraw: FormAction<unknown>): Column<TestView>[] {
  return [
    { id: 'on', head: 'Day', cell: ({ on }) => on },
    { id: 'result', head: 'Result', cell: (test) => <Result test={test} /> },
    { id: 'said', head: 'Steps, expected, seen', cell: (test) => <WhatWasSaid test={test} /> },
    { id: 'by', head: 'Who looked', cell: ({ by }) => by ?? 'not said' },
    {
      id: 'recorded',
      head: 'Recorded',
      cell: (test) => (
        <>
          {instantSaid(test.recordedAt, site.zone)}
          {test.recordedBy === null ? '' : ` by ${test.recordedBy}`}
          {test.withdrawn ? <Withdrawn test={test} zone={site.zone} /> : null}
          {mayTest && !test.withdrawn ? (
            <Fold title="Withdraw">
              <KeptForm
                action={withdraw}
                hidden={{ ...place, test: test.id }}
                labels={{ reason: 'Why it does not count' }}
                button="Withdraw this entry"
                done="It is withdrawn."
              >
                <TextField name="reason" title="Why it does not count" rows={2} />
              </KeptForm>
            </Fold>
          ) : null}
        </>
      ),
    },
  ];
}

function Result({ test: { result, withdrawn } }: { test: TestView }) {
  if (withdrawn) return <s>{result}</s>;
  return result === 'failed' ? <strong>failed</strong> : result;
}

function Withdrawn({ test: { withdrawn }, zone }: { test: TestView; zone: string }) {
  if (!withdrawn) return null;
  const { at, by, reason } = withdrawn;
  return (
    <p className={style.withdrawn}>
      <strong>Withdrawn</strong> {instantSaid(at, zone)}
      {by === null ? '' : ` by ${by}`}: {reason ?? 'a facility file no longer had it'}
    </p>
  );
}

function WhatWasSaid({ test: { steps, expected, seen } }: { test: TestView }) {
  if (!(steps || expected || seen)) return <>not said</>;
  return (
    <dl className={style.said}>
      {steps ? <Part title="Done" text={steps} /> : null}
      {expected ? <Part title="Expected" text={expected} /> : null}
      {seen ? <Part title="Seen" text={seen} /> : null}
    </dl>
  );
}

function Part({ title, text }: { title: string; text: string }) {
  return (
    <>
      <dt>{title}</dt>
      <dd>{text}</dd>
    </>
  );
}
