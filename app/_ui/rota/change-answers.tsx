'use client';

import type { ChangeEvent } from '#core/rota/change';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import type { ChangeView } from './change-view';
import style from './rota.module.css';

const BUTTONS: Readonly<Record<ChangeEvent, string>> = {
  agreed: 'Agree to take it',
  declined: 'Decline',
  approved: 'Approve',
  refused: 'Refuse',
  withdrawn: 'Withdraw',
  'taken-back': 'Take it back',
};

const DONE: Readonly<Record<ChangeEvent, string>> = {
  agreed: 'Agreed. A lead approves it.',
  declined: 'Declined.',
  approved: 'Approved: the rota is changed, and alarms call by it.',
  refused: 'Refused.',
  withdrawn: 'Withdrawn.',
  'taken-back': 'Taken back: the rota is as it was.',
};

/** What whoever looks may say of a change, a button each. */
export function ChangeAnswers({
  site,
  change: { id, kind, may, effect },
  answer,
}: {
  site: string;
  change: ChangeView;
  answer: FormAction<unknown>;
}) {
  const leaves = effect !== null && effect.nobodyMin > 0;
  return (
    <div className={style.answers}>
      {may.map((comes) => (
        <KeptForm
          key={comes}
          action={answer}
          hidden={{
            ...{ site, change: id, comes },
            ...(comes === 'approved' ? { shownMin: String(effect?.nobodyMin ?? 0) } : {}),
          }}
          button={comes === 'approved' && leaves ? `Approve the ${kind}, with these hours` : BUTTONS[comes]}
          done={DONE[comes]}
        />
      ))}
    </div>
  );
}
