'use client';

import { readingSymbol } from '#core/readings/figures';
import type { CalibrationCheck, ChoiceCheck, WaterTestCheck } from '#core/rounds/check';
import type { Custom } from '#core/units/shown';
import { useId, useState } from 'react';
import { EnterSaves } from '../form/enter-saves';
import { QUANTITY_WORDS } from '../readings/words';
import { NoteField } from './note-field';
import style from './rounds.module.css';

interface BusyProps {
  isBusy: boolean;
}

/** A sentence. */
export function TextFields({ isBusy }: BusyProps) {
  return (
    <>
      <NoteField name="text" title="What is seen" isNeeded />
      <Save isBusy={isBusy} />
    </>
  );
}

/** One of a few words; one that is not usual asks what was seen and done. */
export function ChoiceFields({ check, isBusy }: BusyProps & { check: ChoiceCheck }) {
  const [chosen, setChosen] = useState<string | null>(null);
  const other = check.options.find(({ key, usual }) => key === chosen && !usual);
  return (
    <>
      <fieldset className={style.reasons}>
        <legend>What it is</legend>
        {check.options.map(({ key, name }) => (
          <label key={key} className={style.option}>
            <input type="radio" name="option" value={key} required onChange={() => setChosen(key)} /> {name}
          </label>
        ))}
      </fieldset>
      {other ? <NoteField name="note" title="What was seen and done" isNeeded /> : null}
      <Save isBusy={isBusy} />
    </>
  );
}

/** The figures of a water test, each left empty where it was not taken. */
export function WaterFields({ check, units, isBusy }: BusyProps & { check: WaterTestCheck; units: Custom }) {
  return (
    <>
      <EnterSaves />
      {check.asks.map(({ quantity }) => (
        <Figure
          key={quantity}
          name={`figure.${quantity}`}
          title={QUANTITY_WORDS[quantity]}
          symbol={readingSymbol(quantity, units)}
        />
      ))}
      <Save isBusy={isBusy} />
    </>
  );
}

const POINTS = [1, 2, 3] as const;

/** A calibration: at each point what is known, and what was read before and after the instrument was set. */
export function CalibrationFields({ check, units, isBusy }: BusyProps & { check: CalibrationCheck; units: Custom }) {
  const symbol = readingSymbol(check.quantity, units);
  return (
    <>
      <EnterSaves />
      {POINTS.map((nth) => (
        <fieldset key={nth} className={style.reasons}>
          <legend>{nth === 1 ? 'First point' : `Point ${nth} (may stay empty)`}</legend>
          <Figure name={`figure.standard-${nth}`} title="Standard" symbol={symbol} isNeeded={nth === 1} />
          <Figure name={`figure.before-${nth}`} title="Read before" symbol={symbol} isNeeded={nth === 1} />
          <Figure name={`figure.after-${nth}`} title="Read after it was set" symbol={symbol} />
        </fieldset>
      ))}
      {check.slope ? <Figure name="figure.slope" title="Slope" symbol="%" /> : null}
      <div className={style.buttons}>
        <button type="submit" name="seen" value="worked" className={style.main} disabled={isBusy}>
          It may go on
        </button>
        <button type="submit" name="seen" value="failed" disabled={isBusy}>
          It may not
        </button>
      </div>
    </>
  );
}

/** A field for a number, with the keypad of a telephone; a comma is as good as a point. */
function Figure({
  name,
  title,
  symbol,
  isNeeded = false,
}: {
  name: string;
  title: string;
  symbol: string;
  isNeeded?: boolean;
}) {
  const id = useId();
  return (
    <div className={style.measured}>
      <label htmlFor={id}>{title}</label>
      <input
        id={id}
        name={name}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        maxLength={20}
        required={isNeeded}
      />
      <span className={style.unit}>{symbol}</span>
    </div>
  );
}

function Save({ isBusy }: BusyProps) {
  return (
    <div className={style.buttons}>
      <button type="submit" className={style.main} disabled={isBusy}>
        Save
      </button>
    </div>
  );
}
