import { cautionsFor, cautionText } from '#core/cautions/cautions-for';
import { Section } from '../frame/section';
import type { AlarmView } from './alarm-view';
import style from './alarms.module.css';

/** What is to be done, as it is documented, and what whoever goes is to mind. */
export function WhatToDo({ alarm: { definition, caller } }: { alarm: AlarmView }) {
  const isMissing = definition.whatToDo === undefined && caller === null;
  return (
    <Section id="to-do" title="What to do">
      {isMissing ? <p>Nobody has written down what to do when it calls.</p> : null}
      {definition.whatToDo === undefined ? null : <p className={style.note}>{definition.whatToDo}</p>}
      <h3 className={style.before}>Before anybody goes</h3>
      <ul>
        {cautionsFor({ doing: 'alarm', floor: definition.quantity === 'leak' }).map((caution) => (
          <li key={caution.key}>{cautionText(caution)}</li>
        ))}
      </ul>
    </Section>
  );
}
