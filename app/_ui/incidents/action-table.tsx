import type { ReactNode } from 'react';
import type { ActionLine } from '#core/incidents/actions';
import { CAUSE_WORDS, STRENGTH_WORDS } from '#core/incidents/words';
import { Fold } from '../frame/fold';
import { type Column, Ledger } from '../table/ledger';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';
import type { FindingsView } from './investigation-view';
import { When } from './when';

interface ActionProps {
  page: Pick<FindingsView, 'actions' | 'onlyWords' | 'causes'> & { head: HeadView };
  /** The form that says an action is done; null for those who may not. */
  done: ((action: string) => ReactNode) | null;
  /** The form by which an entry is taken back. */
  back?: (entry: string) => ReactNode;
}

/** What is done so that it does not come again: by whom, until when, how strong, and whether it is done. */
export function ActionTable({ page, done, back }: ActionProps) {
  const { actions, onlyWords } = page;
  if (actions.length === 0) return <p>No action is written yet.</p>;
  return (
    <>
      {onlyWords ? (
        <p>
          <span aria-hidden="true" className={style.mark}>
            ▲
          </span>{' '}
          <strong>Every action here asks people to do something better.</strong> The next time the same fault meets
          somebody who is tired. Can the cause be taken away, or a device put in its way?
        </p>
      ) : null}
      <Ledger
        caption={`Strongest: what takes the cause away; then an independent device, finding it automatically, a procedure, a reminder. As of ${page.head.today}.`}
        columns={columnsFor(page, done, back)}
        rows={actions}
        keyOf={({ entry }) => entry.id}
      />
    </>
  );
}

function columnsFor(
  { causes, head }: ActionProps['page'],
  done: ActionProps['done'],
  back: ActionProps['back'],
): Column<ActionLine>[] {
  const causeOf = (id: string | undefined) => causes.find((one) => one.id === id);
  return [
    {
      id: 'text',
      head: 'Action',
      cell: ({ entry }) => (
        <>
          {entry.body.text}
          <span className={style.about}>{answers(causeOf(entry.body.cause))}</span>
        </>
      ),
    },
    { id: 'owner', head: 'Owner', cell: ({ entry }) => entry.body.owner },
    {
      id: 'due',
      head: 'Due',
      cell: (line) => <Due line={line} />,
    },
    {
      id: 'strength',
      head: 'Strength',
      cell: ({ entry }) => `${STRENGTH_WORDS[entry.body.strength]}${entry.body.why ? `: ${entry.body.why}` : ''}`,
    },
    {
      id: 'done',
      head: 'Done',
      cell: (line) => <Done line={line} zone={head.site.zone} done={done} back={back} />,
    },
  ];
}

function Due({ line: { entry, isLate } }: { line: ActionLine }) {
  if (!isLate) return <>{entry.body.due}</>;
  return (
    <>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      <strong>{entry.body.due}, late</strong>
    </>
  );
}

interface DoneProps extends Pick<ActionProps, 'done' | 'back'> {
  line: ActionLine;
  zone: string;
}

function Done({ line: { entry, done: by }, zone, done, back }: DoneProps) {
  if (by)
    return (
      <>
        <When atMs={by.atMs} zone={zone} />: {by.body.proof}
        {back?.(by.id)}
      </>
    );
  return (
    <>
      not yet
      {done ? <Fold title="It is done">{done(entry.id)}</Fold> : null}
      {back?.(entry.id)}
    </>
  );
}

function answers(cause: FindingsView['causes'][number] | undefined): string {
  return cause ? `answers ${CAUSE_WORDS[cause.body.cause]}: ${cause.body.text}` : '';
}
