'use client';

import { useId } from 'react';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { symbolOf } from '../units/figures';
import { EntryForm } from './entry-form';
import { MomentField, NumberField, OptionalLine } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';

const LABELS = {
  group: 'Species group',
  dead: 'Dead',
  putDown: 'Put down',
  missing: 'Missing',
  affected: 'Affected, alive',
  water: 'Water lost',
  at: 'When',
  note: 'Note',
};

interface LossFormProps {
  head: HeadView;
  ids: Readonly<Record<string, string>>;
  investigate: FormAction<unknown>;
  groups: readonly string[];
  units: Custom;
}

/** Records a loss: of one species group, at one time, or of water. */
export function LossForm({ head, ids, investigate, groups, units }: LossFormProps) {
  const id = useId();
  return (
    <div className={style.form}>
      <EntryForm
        key={units}
        action={investigate}
        head={head}
        id={ids.loss}
        hidden={{ kind: 'loss', units }}
        labels={LABELS}
        button="Record the loss"
        done="The loss is recorded."
      >
        <label htmlFor={id}>
          {LABELS.group}
          <input id={id} type="text" name="group" list={`${id}-groups`} maxLength={200} required />
        </label>
        <datalist id={`${id}-groups`}>
          {groups.map((group) => (
            <option key={group} value={group} />
          ))}
        </datalist>
        <div className={style.figures}>
          <NumberField name="dead" title={LABELS.dead} />
          <NumberField name="putDown" title={LABELS.putDown} />
          <NumberField name="missing" title={LABELS.missing} />
          <NumberField name="affected" title={LABELS.affected} />
          <NumberField name="water" title={`${LABELS.water}, ${symbolOf(units, 'volume')}`} />
        </div>
        <MomentField name="at" title={LABELS.at} hint="When they were found. Empty: now." />
        <OptionalLine name="note" title={LABELS.note} />
      </EntryForm>
    </div>
  );
}
