'use client';

import { readingSymbol } from '#core/readings/figures';
import type { Check } from '#core/rounds/check';
import type { Custom } from '#core/units/shown';
import { useId } from 'react';
import { EnterSaves } from '../form/enter-saves';
import { symbolOf } from '../units/figures';
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
  const { check, mode, setMode, isBusy } = props;
  if (mode === 'not-done') return <NotDone isBusy={isBusy} back={() => setMode('look')} />;
  return (
    <>
      {mode === 'other' ? (
        <Other isBusy={isBusy} back={() => setMode('look')} />
      ) : check.kind === 'test' ? (
        <TestFields check={check} isBusy={isBusy} />
      ) : check.kind === 'yes-no' ? (
        <div className={style.buttons}>
          <button type="submit" name="seen" value="usual" className={style.main} disabled={isBusy}>
            As usual
          </button>
          <button type="button" onClick={() => setMode('other')}>
            Not as usual…
          </button>
        </div>
      ) : (
        <NumberFields {...props} />
      )}
      <button type="button" className={style.plain} onClick={() => setMode('not-done')}>
        Not done, because…
      </button>
    </>
  );
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

function NumberFields({ check, units, isBusy }: LineFieldsProps) {
  const id = useId();
  const isCount = check.kind === 'head-count';
  const symbol =
    check.kind === 'number' ? readingSymbol(check.quantity, units) : isCount ? '' : symbolOf(units, 'volume');
  return (
    <>
      <EnterSaves />
      {isCount ? (
        <button type="submit" name="seen" value="usual" className={style.main} disabled={isBusy} formNoValidate>
          All seen, as usual
        </button>
      ) : null}
      <div className={style.measured}>
        <label htmlFor={id}>{isCount ? 'Or counted' : check.kind === 'used' ? 'Used' : 'Read'}</label>
        <input
          id={id}
          name="number"
          type="text"
          inputMode={isCount ? 'numeric' : 'decimal'}
          autoComplete="off"
          maxLength={20}
          required
        />
        <span className={style.unit}>{symbol}</span>
        <button type="submit" className={isCount ? undefined : style.main} disabled={isBusy}>
          Save
        </button>
      </div>
    </>
  );
}
