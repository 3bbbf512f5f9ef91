'use client';

import { readingSymbol } from '#core/readings/figures';
import type { Check } from '#core/rounds/check';
import type { Custom } from '#core/units/shown';
import { useId } from 'react';
import { EnterSaves } from '../form/enter-saves';
import { symbolOf } from '../units/figures';
import { CalibrationFields, ChoiceFields, TextFields, WaterFields } from './more-fields';
import { NotDone } from './not-done';
import { NoteField } from './note-field';
import style from './rounds.module.css';
import { TestFields } from './test-fields';

/** What is being said of a line: what was seen, that it is other than usual, or that it was not done. */
export type Mode = 'look' | 'other' | 'not-done';

interface LineFieldsProps {
  check: Check;
  units: Custom;
  mode: Mode;
  setMode: (mode: Mode) => void;
  isBusy: boolean;
}

/** The fields and buttons of a line, by its kind. */
export function LineFields(props: LineFieldsProps) {
  const { mode, setMode, isBusy } = props;
  if (mode === 'not-done') return <NotDone isBusy={isBusy} back={() => setMode('look')} />;
  return (
    <>
      {mode === 'other' ? <Other isBusy={isBusy} back={() => setMode('look')} /> : <OfKind {...props} />}
      <button type="button" className={style.plain} onClick={() => setMode('not-done')}>
        Not done, because…
      </button>
    </>
  );
}

function OfKind(props: LineFieldsProps) {
  const { check, units, setMode, isBusy } = props;
  switch (check.kind) {
    case 'test':
      return <TestFields check={check} isBusy={isBusy} />;
    case 'yes-no':
      return (
        <div className={style.buttons}>
          <button type="submit" name="seen" value="usual" className={style.main} disabled={isBusy}>
            As usual
          </button>
          <button type="button" onClick={() => setMode('other')}>
            Not as usual…
          </button>
        </div>
      );
    case 'choice':
      return <ChoiceFields check={check} isBusy={isBusy} />;
    case 'text':
      return <TextFields isBusy={isBusy} />;
    case 'photo':
      // Taken by its own field, which stands beside the line.
      return null;
    case 'water-test':
      return <WaterFields check={check} units={units} isBusy={isBusy} />;
    case 'calibration':
      return <CalibrationFields check={check} units={units} isBusy={isBusy} />;
    case 'number':
    case 'figure':
    case 'head-count':
    case 'used':
    case 'doses':
      return <NumberFields {...props} check={check} />;
  }
}

function Other({ isBusy, back }: { isBusy: boolean; back: () => void }) {
  return (
    <>
      <NoteField name="note" title="What is other than usual, and what was done" isNeeded />
      <div className={style.buttons}>
        <button type="submit" name="seen" value="other" className={style.main} disabled={isBusy}>
          Save
        </button>
        <button type="button" onClick={back}>
          Back
        </button>
      </div>
    </>
  );
}

type Counted = Extract<Check, { kind: 'number' | 'figure' | 'head-count' | 'used' | 'doses' }>;

const TITLES: Readonly<Record<Counted['kind'], string>> = {
  number: 'Read',
  figure: 'Read',
  'head-count': 'Or counted',
  used: 'Used',
  doses: 'Given',
};

function symbolBeside(check: Counted, units: Custom): string {
  switch (check.kind) {
    case 'number':
      return readingSymbol(check.quantity, units);
    case 'figure':
      return check.unit;
    case 'head-count':
      return '';
    case 'used':
      return symbolOf(units, 'volume');
    case 'doses':
      return check.dose === undefined ? 'doses' : `doses of ${check.dose}`;
  }
}

function NumberFields({ check, units, isBusy }: Omit<LineFieldsProps, 'check'> & { check: Counted }) {
  const id = useId();
  const isCount = check.kind === 'head-count';
  return (
    <>
      <EnterSaves />
      {isCount ? (
        <button type="submit" name="seen" value="usual" className={style.main} disabled={isBusy} formNoValidate>
          All seen, as usual
        </button>
      ) : null}
      <div className={style.measured}>
        <label htmlFor={id}>{TITLES[check.kind]}</label>
        <input
          id={id}
          name="number"
          type="text"
          inputMode={isCount || check.kind === 'doses' ? 'numeric' : 'decimal'}
          autoComplete="off"
          maxLength={20}
          required
        />
        <span className={style.unit}>{symbolBeside(check, units)}</span>
        <button type="submit" className={isCount ? undefined : style.main} disabled={isBusy}>
          Save
        </button>
      </div>
    </>
  );
}
