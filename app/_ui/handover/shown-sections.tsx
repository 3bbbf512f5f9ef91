import { SECTIONS, type Shown, type ShownLine } from '#core/handover/shown';
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
          {shown[id].length === 0 ? (
            <p>{none}</p>
          ) : (
            <Ledger
              caption={shown[id].length === 1 ? 'One.' : `${shown[id].length}.`}
              columns={columns(zone)}
              rows={shown[id].map((line, at) => ({ ...line, at }))}
              keyOf={({ at }) => String(at)}
            />
          )}
        </Section>
      ))}
    </>
  );
}

type Row = ShownLine & { at: number };

function columns(zone: string): Column<Row>[] {
  const moment = (at: string | null) => (at === null ? '–' : <time dateTime={at}>{momentSaid(at, zone)}</time>);
  return [
    { id: 'what', head: 'What', cell: (line) => <What line={line} /> },
    { id: 'where', head: 'Where', cell: ({ where }) => where ?? 'site' },
    { id: 'more', head: 'To know', cell: ({ more }) => more ?? '–' },
    { id: 'since', head: 'Since', cell: ({ since }) => moment(since) },
    { id: 'until', head: 'Until', cell: ({ until }) => moment(until) },
    { id: 'who', head: 'Who', cell: ({ who }) => (who.length > 0 ? who.join(', ') : '–') },
  ];
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
