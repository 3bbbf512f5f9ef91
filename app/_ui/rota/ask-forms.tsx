'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import { type ChangesView, offeredSaid } from './change-view';

const LABELS = {
  person: 'Whose leave',
  from: 'From',
  to: 'To',
  turn: 'Which turn',
  takes: 'Who takes it',
  back: 'In return',
};

/** Asks for leave. */
export function LeaveForm({ page: { site, offered, ids }, ask }: { page: ChangesView; ask: FormAction<unknown> }) {
  const id = useId();
  return (
    <KeptForm
      action={ask}
      hidden={{ site: site.key }}
      ids={{ entry: ids.leave }}
      labels={LABELS}
      button="Ask for leave"
      done="Asked for. It counts once it is approved."
    >
      <label htmlFor={`${id}p`}>
        Whose leave
        <select id={`${id}p`} name="person" required>
          {offered.leaveOf.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label htmlFor={`${id}f`}>
        From, on the clocks of {site.zone}
        <input id={`${id}f`} type="datetime-local" name="from" required />
      </label>
      <label htmlFor={`${id}t`}>
        To (back on duty from then)
        <input id={`${id}t`} type="datetime-local" name="to" required />
      </label>
      <Why />
    </KeptForm>
  );
}

/** Asks that somebody else take one turn, or a part of it. */
export function SwapForm({ page: { site, offered, ids }, ask }: { page: ChangesView; ask: FormAction<unknown> }) {
  const id = useId();
  return (
    <KeptForm
      action={ask}
      hidden={{ site: site.key }}
      ids={{ entry: ids.swap }}
      labels={LABELS}
      button="Ask for the swap"
      done="Asked for. Whoever takes the turn agrees, then a lead approves."
    >
      <label htmlFor={`${id}g`}>
        Which turn is given
        <Turns id={`${id}g`} name="turn" turns={offered.gives} zone={site.zone} />
      </label>
      <label htmlFor={`${id}w`}>
        Who takes it
        <select id={`${id}w`} name="takes" required defaultValue="">
          <option value="">choose</option>
          {offered.takers.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label htmlFor={`${id}f`}>
        Only from, on the clocks of {site.zone} (left empty: the whole turn)
        <input id={`${id}f`} type="datetime-local" name="from" />
      </label>
      <label htmlFor={`${id}t`}>
        Only to
        <input id={`${id}t`} type="datetime-local" name="to" />
      </label>
      <label htmlFor={`${id}b`}>
        Which of their turns is taken in return
        <Turns id={`${id}b`} name="back" turns={offered.backs} zone={site.zone} none="none" />
      </label>
      <Why />
    </KeptForm>
  );
}

interface TurnsProps {
  id: string;
  name: string;
  turns: ChangesView['offered']['gives'];
  zone: string;
  /** What stands for no turn; without it one has to be chosen. */
  none?: string;
}

function Turns({ id, name, turns, zone, none }: TurnsProps) {
  return (
    <select id={id} name={name} required={none === undefined} defaultValue="">
      <option value="">{none ?? 'choose'}</option>
      {turns.map((turn) => (
        <option key={turn.value} value={turn.value}>
          {offeredSaid(turn, zone)}
        </option>
      ))}
    </select>
  );
}

function Why() {
  const id = useId();
  return (
    <label htmlFor={id}>
      Why (if there is anything to say; it is kept, so nothing private)
      <textarea id={id} name="why" rows={2} maxLength={2000} />
    </label>
  );
}
