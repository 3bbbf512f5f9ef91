import type { ReactNode } from 'react';
import { holds } from '#core/forms/draft';
import type { DraftGroup, Field, FieldFault, Start } from '#core/forms/field';
import { type FieldPath, faultsAt, type FormState, idOf } from './form-state';
import style from './form.module.css';

interface FieldFrameProps {
  field: Field;
  beside: DraftGroup;
  path: FieldPath;
  state: FormState;
  /** Its control is several controls: a group with a legend instead of a label. */
  asGroup?: boolean;
  /** Faults of its parts are said here. */
  within?: boolean;
  /** Whether anything is entered: what is used until then is no longer said. */
  isFilled?: boolean;
  children: ReactNode;
}

/** Ids of what is said about a field, for its control to name. */
export function describedBy(path: FieldPath): string {
  return `${idOf(path)}-about`;
}

/** What stands around the control of a field: its label above, what it is and why it is asked for, what is wrong with it. */
export function FieldFrame(props: FieldFrameProps) {
  const { field, beside, path, state, asGroup, within, isFilled = true, children } = props;
  const faults = faultsAt(state.faults, path, within ?? !asGroup);
  const start = isFilled ? undefined : startFor(field, beside);
  const isWrong = faults.length > 0 || undefined;
  const inside = (
    <>
      <AboutField field={field} path={path} faults={faults} />
      {children}
      {start ? <StartNote start={start} /> : null}
    </>
  );
  if (!asGroup) {
    return (
      <div className={style.field} data-wrong={isWrong}>
        <label htmlFor={idOf(path)}>{labelOf(field)}</label>
        {inside}
      </div>
    );
  }
  return (
    <fieldset
      id={idOf(path)}
      tabIndex={-1}
      className={style.field}
      data-wrong={isWrong}
      aria-describedby={describedBy(path)}
    >
      <legend>{labelOf(field)}</legend>
      {inside}
    </fieldset>
  );
}

function labelOf({ label, optional }: Field): ReactNode {
  return (
    <>
      {label}
      {optional ? <span className={style.optional}> (may be left empty)</span> : null}
    </>
  );
}

function AboutField({ field, path, faults }: { field: Field; path: FieldPath; faults: readonly FieldFault[] }) {
  return (
    <div id={describedBy(path)} className={style.about}>
      {field.asked ? <p className={style.asked}>{field.asked}</p> : null}
      {field.about ? <p>{field.about}</p> : null}
      {faults.map(({ path: at, message }) => (
        <p key={`${at} ${message}`} className={style.fault}>
          <strong aria-hidden="true">! </strong>
          {message}
        </p>
      ))}
    </div>
  );
}

/** What is used as long as nothing is entered, given what its neighbours say. */
function startFor({ starts = [] }: Field, beside: DraftGroup): Start | undefined {
  return starts.find((start) => start.for === undefined || holds(start.for, beside));
}

function StartNote({ start: { value, range, source, confidence } }: { start: Start }) {
  return (
    <p className={style.start}>
      Until something is entered, <b>{value}</b> is used{range ? ` (plausible: ${range})` : ''}. {source}; confidence{' '}
      {confidence}.
    </p>
  );
}
