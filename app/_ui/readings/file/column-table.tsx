import { type ColumnDraft, ZEROS, type Zero } from '#core/readings/file/layout';
import { asksZero } from '#core/readings/file/questions';
import { fileUnits, unitOf } from '#core/readings/file/unit-said';
import { type Column, Ledger } from '../../table/ledger';
import { QUANTITY_WORDS } from '../words';
import { ChoiceField } from './choice-field';
import type { LookView, SensorOption } from './look-view';
import type { PartProps } from './said-fields';
import style from './file.module.css';

const ZERO_NAMES: Record<Zero, string> = {
  real: 'it was 0',
  missing: 'there is no reading',
  below: 'less than could be told',
};

/** Which sensor each column is, or that it is not taken; in which unit it is written, and what 0 means there. */
export function ColumnTable({ seen, draft, change, asked }: PartProps) {
  const set = (place: number, changed: Partial<ColumnDraft>) =>
    change({ ...draft, columns: draft.columns.map((one) => (one.place === place ? { ...one, ...changed } : one)) });
  const askedOf = (place: number, name: string) =>
    asked.find(({ field }) => field === `columns.${place}.${name}`)?.says;
  const none = asked.find(({ field }) => field === 'columns')?.says;
  const columns: Column<ColumnDraft>[] = [
    { id: 'name', head: 'Column', cell: ({ place }) => <ColumnName seen={seen} place={place} /> },
    {
      id: 'sensor',
      head: 'Is the sensor',
      cell: (one) => (
        <ChoiceField
          hidden
          label={`Sensor of column ${nameOf(seen, one.place)}`}
          value={one.sensor ?? ''}
          options={[['', 'not taken'], ...seen.sensors.map((sensor) => [sensor.id, sensorName(sensor)] as const)]}
          asked={askedOf(one.place, 'sensor')}
          choose={(sensor) => set(one.place, chosenSensor(seen, one, sensor))}
        />
      ),
    },
    {
      id: 'unit',
      head: 'Written in',
      cell: (one) => <UnitField {...{ seen, one, set, asked: askedOf(one.place, 'unit') }} />,
    },
    {
      id: 'zero',
      head: '0 says',
      cell: (one) => <ZeroField {...{ seen, one, set, asked: askedOf(one.place, 'zero') }} />,
    },
    { id: 'flag', head: 'How good it is stands in', cell: (one) => <FlagField {...{ seen, one, set }} /> },
  ];
  return (
    <div className={style.columns}>
      <Ledger caption={<h3>Columns</h3>} columns={columns} rows={draft.columns} keyOf={({ place }) => String(place)} />
      {none ? <p className={style.asked}>{none}</p> : null}
    </div>
  );
}

interface CellProps {
  seen: LookView;
  one: ColumnDraft;
  set: (place: number, changed: Partial<ColumnDraft>) => void;
  asked?: string | undefined;
}

function UnitField({ seen, one, set, asked }: CellProps) {
  const quantity = seen.sensors.find(({ id }) => id === one.sensor)?.quantity;
  if (!quantity) return <>–</>;
  return (
    <ChoiceField
      hidden
      label={`Unit of column ${nameOf(seen, one.place)}`}
      value={one.unit ?? ''}
      options={[
        ...(one.unit === null ? [['', 'choose…'] as const] : []),
        ...fileUnits(quantity).map(({ unit, name }) => [unit, name] as const),
      ]}
      asked={asked}
      choose={(unit) => set(one.place, { unit })}
    />
  );
}

function ZeroField({ seen, one, set, asked }: CellProps) {
  const quantity = seen.sensors.find(({ id }) => id === one.sensor)?.quantity;
  const zeros = seen.columns[one.place]?.zeros ?? 0;
  if (!quantity || zeros === 0) return <>–</>;
  return (
    <>
      <ChoiceField
        hidden
        label={`What 0 says in column ${nameOf(seen, one.place)}`}
        value={one.zero ?? ''}
        options={[
          ...(one.zero === null ? [['', 'choose…'] as const] : []),
          ...ZEROS.map((zero) => [zero, ZERO_NAMES[zero]] as const),
        ]}
        asked={asked}
        choose={(zero) => set(one.place, { zero: zero as Zero })}
      />
      <span className={style.hint}>{zeros === 1 ? 'in 1 row' : `in ${zeros} rows`}</span>
    </>
  );
}

function FlagField({ seen, one, set }: CellProps) {
  if (one.sensor === null) return <>–</>;
  const others = seen.columns.filter(({ place, isTime }) => place !== one.place && !isTime);
  return (
    <ChoiceField
      hidden
      label={`Column with the flags of ${nameOf(seen, one.place)}`}
      value={one.flag === null ? '' : String(one.flag)}
      options={[['', 'no column'], ...others.map(({ place }) => [String(place), nameOf(seen, place)] as const)]}
      choose={(flag) => set(one.place, { flag: flag === '' ? null : Number(flag) })}
    />
  );
}

function ColumnName({ seen, place }: { seen: LookView; place: number }) {
  const column = seen.columns[place];
  return (
    <>
      {nameOf(seen, place)}
      <span className={style.examples}>
        {[column?.unit ?? '', (column?.examples ?? []).slice(0, 3).join(' · ')]
          .filter((text) => text !== '')
          .join(' | ')}
      </span>
    </>
  );
}

/** What a change of the sensor brings with it: the unit that the column's name says, and 0 where it is nothing to be asked. */
function chosenSensor(seen: LookView, one: ColumnDraft, id: string): Partial<ColumnDraft> {
  const sensor = seen.sensors.find((other) => other.id === id);
  if (!sensor) return { sensor: null };
  const column = seen.columns[one.place];
  const known = fileUnits(sensor.quantity).map(({ unit }) => unit);
  const said = unitOf(sensor.quantity, `${column?.name ?? ''} (${column?.unit ?? ''})`);
  const kept = one.unit !== null && known.includes(one.unit) ? one.unit : null;
  const isPlainZero = !asksZero(sensor.quantity, column?.zeros ?? 0);
  return { sensor: id, unit: said ?? kept, zero: isPlainZero ? (one.zero ?? 'real') : one.zero };
}

function nameOf(seen: LookView, place: number): string {
  return seen.columns[place]?.name || `column ${place + 1}`;
}

function sensorName({ name, systemName, quantity }: SensorOption): string {
  return `${systemName}: ${name} (${QUANTITY_WORDS[quantity]})`;
}
