import type { Doer, TimelineLine } from '#core/incidents/timeline';
import { SOURCE_WORDS } from '#core/incidents/words';
import type { Custom } from '#core/units/shown';
import { photoAddress } from '../rounds/round-view';
import { type Column, Ledger } from '../table/ledger';
import style from './incidents.module.css';
import { measured } from './measured';
import topics from './topics.json';
import { When } from './when';

interface TableProps {
  lines: readonly TimelineLine[];
  zone: string;
  units: Custom;
  /** Key of the site whose photos are shown; none are when left out, as where persons are not named. */
  site?: string;
  /** What to call those who did something, by name; their names when left out. */
  called?: ReadonlyMap<string, string>;
}

/** The timeline: time down the left, what, who, and how it is known. */
export function TimelineTable({ lines, zone, units, site, called }: TableProps) {
  if (lines.length === 0) return <p>Nothing of this kind is recorded in this time.</p>;
  const columns: Column<TimelineLine>[] = [
    { id: 'when', head: 'When', cell: ({ atMs }) => <When atMs={atMs} zone={zone} /> },
    { id: 'what', head: 'What', cell: (line) => <What line={line} units={units} site={site} /> },
    { id: 'who', head: 'Who', cell: ({ who }) => doerSaid(who, called) },
    { id: 'topic', head: 'About', cell: ({ topic }) => topics[topic] },
    { id: 'source', head: 'How it is known', cell: ({ source }) => SOURCE_WORDS[source] },
  ];
  return (
    <Ledger
      caption={`In the order of time, as clocks in ${zone} show it.`}
      columns={columns}
      rows={[...lines]}
      keyOf={({ id, topic }) => `${topic}/${id}`}
    />
  );
}

/** Who did something, by name and role, or by what they are called instead. */
function doerSaid(who: Doer | null, called?: ReadonlyMap<string, string>): string {
  if (!who) return '–';
  if (called) return called.get(who.name) ?? 'somebody';
  return who.role === null ? who.name : `${who.name}, ${who.role}`;
}

function What({ line, units, site }: { line: TimelineLine; units: Custom; site: string | undefined }) {
  const { what, figures = [], photos = [], isAbnormal } = line;
  const said = [what, ...figures.map((one) => measured(units, one))].join(': ');
  return (
    <span className={style.said}>
      {isAbnormal ? (
        <>
          <span aria-hidden="true" className={style.mark}>
            ▲
          </span>
          <span className={style.unseen}>Abnormal: </span>{' '}
        </>
      ) : null}
      {said}
      {(site === undefined ? [] : photos).map((photo, index) => (
        <a key={photo} href={photoAddress(site ?? '', photo)}>
          {' '}
          Photo {index + 1}
        </a>
      ))}
    </span>
  );
}
