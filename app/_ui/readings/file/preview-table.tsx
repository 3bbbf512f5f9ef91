import { readingSaid } from '#core/readings/figures';
import type { FileRow } from '#core/readings/file/layout';
import reasons from '#core/readings/reasons.json';
import { type Column, Ledger } from '../../table/ledger';
import { QualityMark } from '../quality';
import type { LookView, PreviewView } from './look-view';
import style from './file.module.css';

/** First and last rows of a file: as they would be stored, or, as long as something is asked, as they stand. */
export function PreviewTable({ seen, isFresh }: { seen: LookView; isFresh: boolean }) {
  if (seen.preview && isFresh) return <Stored seen={seen} rows={seen.preview} />;
  return <Raw seen={seen} />;
}

function Stored({ seen, rows }: { seen: LookView; rows: PreviewView[] }) {
  const taken = seen.draft.columns.flatMap(({ sensor }) => seen.sensors.filter(({ id }) => id === sensor));
  const columns: Column<PreviewView>[] = [
    { id: 'line', head: 'Line', cell: ({ line }) => line },
    {
      id: 'at',
      head: `At, ${seen.zone}`,
      cell: ({ there, at, fault }) =>
        fault ?? (
          <>
            {there}
            <span className={style.examples}>{at?.replace('.000Z', 'Z').replace('T', ' ')} in UTC</span>
          </>
        ),
    },
    ...taken.map(({ id, name, quantity }) => ({
      id,
      head: name,
      cell: ({ values }: PreviewView) => {
        const own = values.find(({ sensor }) => sensor === id);
        if (!own) return <span className={style.examples}>no reading</span>;
        return (
          <>
            {readingSaid(quantity, 'metric', own.value)} <QualityMark quality={own.quality} why={whyOf(own.reason)} />
            <span className={style.examples}>
              {own.flag ? `“${own.raw}”, flag ${own.flag}` : `“${own.raw}” in the file`}
            </span>
          </>
        );
      },
    })),
  ];
  return (
    <Ledger
      caption={<h3>First and last rows as they will be stored</h3>}
      columns={columns}
      rows={rows}
      keyOf={({ line }) => String(line)}
    />
  );
}

function Raw({ seen: { raw, columns } }: { seen: LookView }) {
  const shown: Column<FileRow>[] = [
    { id: 'line', head: 'Line', cell: ({ line }) => line },
    {
      id: 'cells',
      head: columns.map(({ place, name }) => name || `column ${place + 1}`).join(' | '),
      cell: ({ cells }) => <span className={style.cells}>{cells.join(' | ')}</span>,
    },
  ];
  return (
    <Ledger
      caption="First and last rows as they stand in the file"
      columns={shown}
      rows={[...raw.first, ...raw.last]}
      keyOf={({ line }) => String(line)}
    />
  );
}

function whyOf(reason: string | null): string | null {
  if (reason === null) return null;
  return Object.hasOwn(reasons, reason) ? reasons[reason as keyof typeof reasons] : reason;
}
