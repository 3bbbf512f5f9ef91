import { type Called, entrySaid, KIND_WORDS, SOURCE_WORDS } from '#core/incidents/words';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { type Column, Ledger } from '../table/ledger';
import type { HeadView, StoryView } from './incident-view';
import style from './incidents.module.css';
import { LogForm } from './log-form';
import { measured } from './measured';
import { localMinute, When } from './when';
import { WithdrawForm } from './withdraw-form';

interface LogProps {
  head: HeadView;
  story: readonly StoryView[];
  called: Called;
  ids: Readonly<Record<string, string>>;
  units: Custom;
  log: FormAction<unknown>;
  withdraw: FormAction<unknown>;
}

/** Every entry of an incident in the order in which it happened; what was corrected stays, struck out. */
export function LogTable(props: LogProps) {
  const { head, story } = props;
  if (story.length === 0) return <p>Nothing is written yet.</p>;
  return (
    <Ledger
      caption={`Entries are added and never changed. Times are those of ${head.site.zone}.`}
      columns={columnsFor(props)}
      rows={[...story]}
      keyOf={({ entry }) => entry.id}
    />
  );
}

function columnsFor(props: LogProps): Column<StoryView>[] {
  const { zone } = props.head.site;
  return [
    { id: 'when', head: 'When', cell: ({ entry }) => <When atMs={entry.atMs} zone={zone} /> },
    { id: 'kind', head: 'Kind', cell: ({ entry }) => KIND_WORDS[entry.kind] },
    { id: 'what', head: 'What', cell: (line) => <What line={line} {...props} /> },
    { id: 'who', head: 'Who', cell: ({ who }) => who.name },
    {
      id: 'written',
      head: 'Written',
      cell: ({ entry, isAfterSigning }) => (
        <>
          <When atMs={entry.recordedMs} zone={zone} />
          {isAfterSigning ? <strong> after it was signed</strong> : null}
        </>
      ),
    },
  ];
}

function What({ line, ...props }: LogProps & { line: StoryView }) {
  const { entry, isSuperseded } = line;
  const said = entrySaid(entry, props.called);
  const figures =
    entry.kind === 'measurement' && entry.body ? entry.body.figures.map((one) => measured(props.units, one)) : [];
  const text = [said, ...figures].join(figures.length > 0 ? '; ' : '');
  return (
    <>
      <span className={style.said}>{isSuperseded ? <s>{text}</s> : text}</span>
      {entry.kind === 'log' && entry.body ? (
        <span className={style.small}> ({SOURCE_WORDS[entry.body.source]})</span>
      ) : null}
      {entry.supersedes !== null && entry.body !== null ? (
        <span className={style.small}> In the place of another entry: {entry.reason}</span>
      ) : null}
      {!isSuperseded && entry.body !== null && props.head.mayLog ? <Correct line={line} {...props} /> : null}
    </>
  );
}

function Correct({ line: { entry }, head, ids, log, withdraw }: LogProps & { line: StoryView }) {
  const id = ids[entry.id];
  if (entry.kind !== 'log' || !entry.body)
    return (
      <Fold title="Take back">
        <WithdrawForm head={head} id={id} entry={entry.id} withdraw={withdraw} />
      </Fold>
    );
  const { text, source } = entry.body;
  const corrects = { id: entry.id, text, source, at: localMinute(entry.atMs, head.site.zone) };
  return (
    <Fold title="Correct or take back">
      <LogForm head={head} id={id} log={log} corrects={corrects} />
      <WithdrawForm head={head} id={id} entry={entry.id} withdraw={withdraw} />
    </Fold>
  );
}
