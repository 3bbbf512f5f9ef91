import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { type Column, Ledger } from '../table/ledger';
import { BeginForm } from './begin-form';
import { BesidesForm } from './besides-form';
import { type RoundsView, roundsAddress, type WalkView } from './round-view';
import { walkAddress } from '../walk/where';
import style from './rounds.module.css';
import { sheetsAddress } from '../sheets/sheet-views';
import { momentSaid } from '../words/moment';
import { StandingMark } from './standing-mark';
import { UnsignedSection } from './unsigned-section';

/** What a round that was begun answers: where it is. */
export type BeginAction = FormAction<{ site: string; round: string }>;

/** Walks of the past that are shown without being asked for. */
const AT_ONCE = 6;

interface RoundsBodyProps {
  page: RoundsView;
  begin: BeginAction;
  besides: BeginAction;
}

/** The rounds of a site: what is to be walked now, what waits for a second look, and what was walked. */
export function RoundsBody({ page, begin, besides }: RoundsBodyProps) {
  const { site, lines, waiting, mayWalk } = page;
  return (
    <Page
      title="Rounds"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={
        <p>
          {leadSaid(lines)} Times are those of the site ({site.zone}). What is looked at, and how often:{' '}
          <Link href={sheetsAddress(site.key)}>round sheets</Link>.
        </p>
      }
    >
      <UnsignedSection page={page} />
      <Section id="now" title="To be walked" wide>
        <Open page={page} begin={begin} />
      </Section>
      {mayWalk ? <WithTelephone site={site.key} /> : null}
      {waiting.length > 0 ? (
        <Section id="second-look" title="Waiting for a second look" wide>
          <Waiting page={page} />
        </Section>
      ) : null}
      {mayWalk && page.slots.length > 0 ? (
        <Section
          id="besides"
          title="Besides the timetable"
          note="After an alarm, or when one was missed: the same sheet, walked now."
        >
          <BesidesForm key={page.nextRound} page={page} besides={besides} />
        </Section>
      ) : null}
      <Section id="past" title="Today and the past week" wide>
        <Past page={page} />
      </Section>
      <LiveRefresh site={site.key} what={['rounds']} />
    </Page>
  );
}

function Open({ page, begin }: Pick<RoundsBodyProps, 'page' | 'begin'>) {
  const open = page.lines.filter(isOpen).reverse();
  if (open.length === 0) return <p>Nothing is due at the moment.</p>;
  const columns = openColumns(page, begin);
  return (
    <Ledger caption="Due, late and begun rounds, the earliest first." columns={columns} rows={open} keyOf={keyOf} />
  );
}

function WithTelephone({ site }: { site: string }) {
  return (
    <p>
      {/* A page of its own, which the browser keeps and opens without a signal. */}
      <a className={style.go} href={walkAddress(site)}>
        Walk without a signal
      </a>{' '}
      <Link className={style.go} href={`${roundsAddress(site)}/labels`}>
        Labels of the tanks
      </Link>
    </p>
  );
}

/** What was walked and missed, the latest at once and the rest behind a fold. */
function Past({ page }: { page: RoundsView }) {
  const past = page.lines.filter((line) => !isOpen(line));
  const older = past.slice(AT_ONCE);
  const columns = pastColumns(page);
  return (
    <>
      <Ledger caption="The latest first." columns={columns} rows={past.slice(0, AT_ONCE)} keyOf={keyOf} />
      {older.length > 0 ? (
        <Fold title={`Earlier: ${older.length} more`}>
          <Ledger caption="Earlier, the latest first." columns={columns} rows={older} keyOf={keyOf} />
        </Fold>
      ) : null}
    </>
  );
}

function isOpen({ standing, round }: WalkView): boolean {
  return standing === 'due' || standing === 'begun' || standing === 'late' || (standing === 'missed' && round !== null);
}

function keyOf({ slot, sheet, dueAt, round }: WalkView): string {
  return `${slot ?? sheet ?? round} ${dueAt}`;
}

function leadSaid(lines: WalkView[]): string {
  const count = (standing: WalkView['standing']) => lines.filter((line) => line.standing === standing).length;
  return `Due: ${count('due')}. Begun: ${count('begun')}. Late: ${count('late')}. Missed in the past week: ${count('missed')}.`;
}

function NameOf({ site, line }: { site: string; line: WalkView }) {
  return (
    <>
      {line.round === null ? line.name : <Link href={roundsAddress(site, line.round)}>{line.name}</Link>}
      <span className={style.about}>
        {line.sheet !== null
          ? 'a round sheet'
          : line.slot === null
            ? 'besides the timetable'
            : line.systems === null
              ? 'all systems'
              : line.systems.join(', ')}
      </span>
    </>
  );
}

function beginFields(site: string, { slot, sheet, dueAt }: WalkView): Record<string, string> {
  return { site, due: dueAt, ...(slot !== null && { slot }), ...(sheet !== null && { sheet }) };
}

function openColumns({ site, mayWalk }: RoundsView, begin: BeginAction): Column<WalkView>[] {
  return [
    { id: 'due', head: 'Due', cell: ({ dueAt }) => <time dateTime={dueAt}>{momentSaid(dueAt, site.zone)}</time> },
    { id: 'name', head: 'Round', cell: (line) => <NameOf site={site.key} line={line} /> },
    {
      id: 'state',
      head: 'State',
      cell: ({ standing, begun, lateAt }) => (
        <>
          <StandingMark standing={standing} />
          {begun ? `, begun by ${begun.by} at ${momentSaid(begun.at, site.zone)}` : null}
          {standing === 'due' && lateAt ? `, late from ${momentSaid(lateAt, site.zone)}` : null}
        </>
      ),
    },
    {
      id: 'act',
      head: 'Walk it',
      cell: (line) =>
        line.round ? (
          <Link className={style.go} href={roundsAddress(site.key, line.round)}>
            {mayWalk ? 'Go on with' : 'See'} {line.name}
          </Link>
        ) : mayWalk && (line.slot ?? line.sheet) !== null ? (
          <BeginForm action={begin} fields={beginFields(site.key, line)} name={line.name} />
        ) : (
          'nobody has begun it'
        ),
    },
  ];
}

function pastColumns({ site }: RoundsView): Column<WalkView>[] {
  const done = (by: WalkView['signed']) => (by ? `${by.by}, ${momentSaid(by.at, site.zone)}` : '–');
  return [
    { id: 'due', head: 'Due', cell: ({ dueAt }) => <time dateTime={dueAt}>{momentSaid(dueAt, site.zone)}</time> },
    { id: 'name', head: 'Round', cell: (line) => <NameOf site={site.key} line={line} /> },
    { id: 'state', head: 'State', cell: ({ standing }) => <StandingMark standing={standing} /> },
    {
      id: 'signed',
      head: 'Signed',
      cell: ({ signed, wantsSecond }) => `${done(signed)}${wantsSecond ? '; waits for the second signature' : ''}`,
    },
    { id: 'look', head: 'Second look', cell: ({ secondLook }) => done(secondLook) },
  ];
}

/** What waits for a second look: for those who may look a few at once, and for all others, who can only see it, behind a fold. */
function Waiting({ page }: { page: RoundsView }) {
  const { waiting, mayLook } = page;
  const atOnce = mayLook ? waiting.slice(-AT_ONCE).reverse() : [];
  const older = mayLook ? waiting.slice(0, -AT_ONCE).reverse() : waiting.toReversed();
  return (
    <>
      {atOnce.length > 0 ? (
        <WaitingTable page={page} waiting={atOnce} caption="Nobody but the signer has looked." />
      ) : null}
      {older.length > 0 ? (
        <Fold title={mayLook ? `Earlier: ${older.length} more` : `${older.length} signed, for a lead to look at`}>
          <WaitingTable page={page} waiting={older} caption="The latest first." />
        </Fold>
      ) : null}
    </>
  );
}

interface WaitingTableProps {
  page: RoundsView;
  waiting: RoundsView['waiting'];
  caption: string;
}

function WaitingTable({ page: { site, lines }, waiting, caption }: WaitingTableProps) {
  const rows = waiting.flatMap((one) => {
    const line = lines.find(({ round }) => round === one.round);
    return line ? [{ ...one, line }] : [];
  });
  return (
    <Ledger
      caption={caption}
      columns={[
        { id: 'due', head: 'Due', cell: ({ line }) => momentSaid(line.dueAt, site.zone) },
        { id: 'name', head: 'Round', cell: ({ line }) => <NameOf site={site.key} line={line} /> },
        { id: 'signed', head: 'Signed by', cell: ({ line }) => line.signed?.by ?? '–' },
        { id: 'abnormal', head: 'Other than usual', figure: true, cell: ({ abnormal }) => abnormal },
        { id: 'not-done', head: 'Not done', figure: true, cell: ({ notDone }) => notDone },
        { id: 'corrected', head: 'Corrected', figure: true, cell: ({ corrected }) => corrected },
      ]}
      rows={rows}
      keyOf={({ round }) => round}
    />
  );
}
