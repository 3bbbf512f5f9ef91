'use client';

import type { SensorQuantity } from '#core/facility/system';
import { readingSymbol } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { EntryForm } from './entry-form';
import cautions from './cautions.json';
import { MomentField, NumberField, OptionalLine, TickField } from './fields';
import type { HeadView, SensorView } from './incident-view';
import style from './incidents.module.css';
import { quantityName } from './measured';

/** What a hand-held meter measures, the first first. */
const METERED: readonly SensorQuantity[] = [
  'oxygen',
  'temperature',
  'ph',
  'salinity',
  'oxygen-saturation',
  'redox',
  'ammonia',
  'nitrite',
];
/** Those that have a field also where no sensor is described for them. */
const ALWAYS = 4;

interface FormsProps {
  head: HeadView;
  ids: Readonly<Record<string, string>>;
  log: FormAction<unknown>;
}

const LABELS = { where: 'Where', at: 'When', notDone: 'Not done, because', note: 'Note', chilled: 'Bottles' };

/** The water sample, and beside it what a meter shows: two people can do both within a minute. */
export function SampleForms(props: FormsProps & { sensors: readonly SensorView[]; units: Custom }) {
  return (
    <div className={`${style.beside} ${style.form}`}>
      <SampleForm {...props} />
      <MeterForm {...props} />
    </div>
  );
}

function SampleForm({ head, ids, log }: FormsProps) {
  return (
    <div>
      <h3>Water sample</h3>
      <p className={style.small}>{cautions.sample}</p>
      <EntryForm
        action={log}
        head={head}
        id={ids.sample}
        hidden={{ kind: 'sample' }}
        labels={LABELS}
        button="Record the sample"
        done="The sample is recorded."
      >
        <TickField name="chilled" title="One bottle is chilled" />
        <TickField name="frozen" title="One bottle is frozen" />
        <OptionalLine name="where" title={LABELS.where} hint="Tank, and where in it." />
        <Besides />
      </EntryForm>
    </div>
  );
}

function MeterForm({ head, ids, log, sensors, units }: FormsProps & { sensors: readonly SensorView[]; units: Custom }) {
  return (
    <div>
      <h3>Meter reading</h3>
      <p className={style.small}>{cautions.meter}</p>
      <EntryForm
        action={log}
        head={head}
        key={units}
        id={ids.measurement}
        hidden={{ kind: 'measurement', units }}
        labels={{ ...LABELS, figures: 'Figures', ...labelsFor(sensors) }}
        button="Record the reading"
        done="The reading is recorded."
      >
        <div className={style.figures}>
          {figureFields(sensors).map(({ name, title, quantity }) => (
            <NumberField key={name} name={name} title={`${title}${unitSaid(units, quantity)}`} />
          ))}
        </div>
        <OptionalLine name="where" title={LABELS.where} />
        <Besides />
      </EntryForm>
    </div>
  );
}

function Besides() {
  return (
    <>
      <MomentField name="at" title={LABELS.at} hint="Empty: now." />
      <OptionalLine name="notDone" title={LABELS.notDone} hint="Only if it was not done." />
    </>
  );
}

interface FigureField {
  name: string;
  title: string;
  quantity: SensorQuantity;
}

/** A field for each sensor that a meter can be read for, and for what every meter measures. */
function figureFields(sensors: readonly SensorView[]): FigureField[] {
  return METERED.flatMap((quantity, i): FigureField[] => {
    const own = sensors.filter((sensor) => sensor.quantity === quantity);
    if (own.length > 0) return own.map(({ id, name }) => ({ name: `figure.${quantity}.${id}`, title: name, quantity }));
    return i < ALWAYS ? [{ name: `figure.${quantity}.-`, title: quantityName(quantity), quantity }] : [];
  });
}

function labelsFor(sensors: readonly SensorView[]): Record<string, string> {
  return Object.fromEntries(figureFields(sensors).map(({ name, title }) => [name, title]));
}

function unitSaid(units: Custom, quantity: SensorQuantity): string {
  const unit = readingSymbol(quantity, units);
  return unit === '' ? '' : `, ${unit}`;
}
