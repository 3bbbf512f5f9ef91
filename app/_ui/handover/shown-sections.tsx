import { linesOf, SECTIONS, type Shown, type ShownLine } from '#core/handover/shown';
import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import style from './handover.module.css';

/** What stands at a site, section by section; people stand by name. */
export function ShownSections({ shown, zone }: { shown: Shown; zone: string }) {
  return (
    <>
      {SECTIONS.map(({ id, title, none }) => (
        <Section key={id} id={id} title={title} wide>
          <Lines lines={linesOf(shown, id)} none={none} zone={zone} />
        </Section>
      ))}
    </>
  );
}

function Lines({ lines, none, zone }: { lines: readonly ShownLine[]; none: string; zone: string }) {
  if (lines.length === 0) return <p>{none}</p>;
  return (
    <Ledger
      caption={lines.length === 1 ? 'One line.' : `${lines.length} lines.`}
      columns={columns(zone, lines)}
      rows={lines.map((line, at) => ({ ...line, at }))}
      keyOf={({ at }) => String(at)}
    />
  );
}

type Row = ShownLine & { at: number };

/** The columns of a section: those in which any of its lines says something. */
function columns(zone: string, lines: readonly ShownLine[]): Column<Row>[] {
  const moment = (at: string | null) => (at === null ? '–' : <time dateTime={at}>{momentSaid(at, zone)}</time>);
  const all: (Column<Row> & { isSaid: boolean })[] = [
    { id: 'what', head: 'What', cell: (line) => <What line={line} />, isSaid: true },
    { id: 'where', head: 'Where', cell: ({ where }) => where ?? 'site', isSaid: lines.some(({ where }) => where) },
    { id: 'more', head: 'To know', cell: ({ more }) => more ?? '–', isSaid: lines.some(({ more }) => more) },
    { id: 'since', head: 'Since', cell: ({ since }) => moment(since), isSaid: lines.some(({ since }) => since) },
    { id: 'until', head: 'Until', cell: ({ until }) => moment(until), isSaid: lines.some(({ until }) => until) },
    {
      id: 'who',
      head: 'Who',
      cell: ({ who }) => (who.length > 0 ? who.join(', ') : '–'),
      isSaid: lines.some(({ who }) => who.length > 0),
    },
  ];
  return all.filter(({ isSaid }) => isSaid);
}

function What({ line: { what, isAbnormal } }: { line: ShownLine }) {
  if (!isAbnormal) return what;
  return (
    <>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      <strong>{what}</strong>
    </>
  );
}
