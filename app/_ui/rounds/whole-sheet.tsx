import type { Custom } from '#core/units/shown';
import { Fold } from '../frame/fold';
import { Ledger } from '../table/ledger';
import { EntryLog } from './entry-log';
import type { RoundView } from './round-view';
import style from './rounds.module.css';

/** Every line of a round with what was recorded, to be read over or printed. */
export function WholeSheet({ page: { site, places }, units }: { page: RoundView; units: Custom }) {
  return (
    <Fold title="Every line, to read over or print">
      {places.map((place) => (
        <div key={place.number} className={style.sheet}>
          <Ledger
            caption={`${place.number}. ${place.name}`}
            columns={[
              {
                id: 'what',
                head: 'Line',
                cell: ({ check }) => check.what,
              },
              {
                id: 'seen',
                head: 'Seen',
                cell: (line) => <EntryLog line={line} site={site} units={units} />,
              },
            ]}
            rows={place.lines}
            keyOf={({ check }) => check.key}
          />
        </div>
      ))}
    </Fold>
  );
}
