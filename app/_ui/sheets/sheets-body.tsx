import { scheduleSaid } from '#core/rounds/schedule-words';
import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { roundsAddress } from '../rounds/round-view';
import { StandingMark } from '../rounds/standing-mark';
import { KeptForm } from '../safeguards/kept-form';
import { type Column, Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import { type SheetInForceView, type SheetsView, sheetsAddress } from './sheet-views';
import { GRACE_WORDS } from './sheet-words';
import { Starts } from './starts';
import style from './sheets.module.css';

interface SheetsBodyProps {
  page: SheetsView;
  start: FormAction<unknown>;
  put: FormAction<unknown>;
}

/** The round sheets of a site: those in force with when they are due, those being written, and what is due ahead. */
export function SheetsBody({ page, start, put }: SheetsBodyProps) {
  const { site, drafts, mayChange } = page;
  return (
    <Page
      title="Round sheets"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: roundsAddress(site.key), name: 'Rounds' },
      ]}
      lead={
        <p>
          What is looked at, how often, and who signs it. A round keeps the version of the sheet it was begun with.
          Times are those of the site ({site.zone}).
        </p>
      }
    >
      <Section id="in-force" title="In force" wide>
        <InForce page={page} />
      </Section>
      {drafts.length > 0 ? (
        <Section id="drafts" title="Being written" note="Nobody walks a draft until it is put into force." wide>
          <Drafts page={page} put={put} />
        </Section>
      ) : null}
      {mayChange ? (
        <Section
          id="start"
          title="Begin from the description"
          note="Drafts of the sheets that follow from what is described: plant and animals each shift, readings daily, water tests weekly, tests of safeguards and calibrations by their intervals."
        >
          <Starts page={page} start={start} />
        </Section>
      ) : null}
      {page.ahead.length > 0 ? (
        <Section id="ahead" title="The next sixty days" wide>
          <Ahead page={page} />
        </Section>
      ) : null}
      <LiveRefresh site={site.key} what={['rounds']} />
    </Page>
  );
}

function InForce({ page }: { page: SheetsView }) {
  if (page.sheets.length === 0)
    return <p>None yet: the rounds of the timetable are walked on sheets that follow from the description.</p>;
  const columns = columnsOf(page);
  return (
    <Ledger
      caption="Sheets with a schedule of their own."
      columns={columns}
      rows={page.sheets}
      keyOf={({ key }) => key}
    />
  );
}

function columnsOf({ site }: SheetsView): Column<SheetInForceView>[] {
  const moment = (at: string | null) => (at === null ? '–' : momentSaid(at, site.zone));
  return [
    { id: 'name', head: 'Sheet', cell: ({ key, name }) => <Link href={sheetsAddress(site.key, key)}>{name}</Link> },
    {
      id: 'when',
      head: 'Due',
      cell: ({ schedule, frequency }) => (
        <>
          {scheduleSaid(schedule)}
          <span className={style.about}>{GRACE_WORDS[frequency]}</span>
        </>
      ),
    },
    {
      id: 'now',
      head: 'Now',
      cell: ({ open, missed }) => (
        <>
          {open ? <StandingMark standing={open.standing} /> : 'nothing due'}
          {missed > 0 ? <span className={style.about}>missed: {missed}</span> : null}
        </>
      ),
    },
    { id: 'next', head: 'Next', cell: ({ next }) => moment(next) },
    {
      id: 'lines',
      head: 'Lines',
      figure: true,
      cell: ({ lines, gone }) => (gone > 0 ? `${lines}, ${gone} gone` : lines),
    },
    { id: 'version', head: 'Version', cell: ({ version, since }) => `${version}, since ${moment(since)}` },
  ];
}

function Drafts({ page: { site, drafts, mayChange }, put }: { page: SheetsView; put: FormAction<unknown> }) {
  return (
    <>
      <Ledger
        caption="Drafts, by key."
        columns={[
          {
            id: 'name',
            head: 'Sheet',
            cell: ({ key, name }) => <Link href={sheetsAddress(site.key, key)}>{name}</Link>,
          },
          { id: 'when', head: 'Would be due', cell: ({ schedule }) => scheduleSaid(schedule) },
          { id: 'lines', head: 'Lines', figure: true, cell: ({ lines }) => lines },
          {
            id: 'of',
            head: 'Draft of',
            cell: ({ basedOn }) => (basedOn === null ? 'a new sheet' : `a change of version ${basedOn}`),
          },
          {
            id: 'by',
            head: 'Last changed',
            cell: ({ changed }) => `${changed.by}, ${momentSaid(changed.at, site.zone)}`,
          },
        ]}
        rows={drafts}
        keyOf={({ key }) => key}
      />
      {mayChange ? (
        <KeptForm
          action={put}
          hidden={{ site: site.key, sheets: drafts.map(({ key }) => key).join(',') }}
          button={drafts.length === 1 ? 'Put this draft into force' : `Put these ${drafts.length} drafts into force`}
          done="They are in force."
        />
      ) : null}
    </>
  );
}

/** What is due, sheet by sheet and moment by moment. */
function Ahead({ page: { site, sheets, ahead } }: { page: SheetsView }) {
  return (
    <>
      {sheets.map(({ key, name }) => {
        const own = ahead.filter(({ sheet }) => sheet === key);
        if (own.length === 0) return null;
        return (
          <Fold key={key} title={`${name}: ${own.length === 1 ? 'once' : `${own.length} times`}`}>
            <ol className={style.times}>
              {own.map(({ dueAt }) => (
                <li key={dueAt}>
                  <time dateTime={dueAt}>{momentSaid(dueAt, site.zone)}</time>
                </li>
              ))}
            </ol>
          </Fold>
        );
      })}
    </>
  );
}
