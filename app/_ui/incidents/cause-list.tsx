import type { ReactNode } from 'react';
import type { Standing } from '#core/incidents/story';
import { CAUSE_WORDS } from '#core/incidents/words';

interface CauseProps {
  causes: readonly Standing<'cause'>[];
  /** The form by which an entry is taken back. */
  back?: (entry: string) => ReactNode;
}

/** The causes: what is a fact first, then what is an opinion. */
export function CauseList({ causes, back }: CauseProps) {
  if (causes.length === 0) return <p>No cause is written yet.</p>;
  const of = (certainty: 'fact' | 'opinion') => causes.filter(({ body }) => body.certainty === certainty);
  return (
    <>
      <Part title="Shown by evidence" causes={of('fact')} back={back} />
      <Part title="Held to be likely" causes={of('opinion')} back={back} />
    </>
  );
}

function Part({ title, causes, back }: CauseProps & { title: string }) {
  if (causes.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {causes.map(({ id, body }) => (
          <li key={id}>
            <strong>{CAUSE_WORDS[body.cause]}</strong>: {body.text}
            {back?.(id)}
          </li>
        ))}
      </ul>
    </>
  );
}
