'use client';

import type { FormAction } from '../form/answer';
import { TextField } from '../safeguards/fields';
import { EntryForm } from './entry-form';
import type { HeadView } from './incident-view';

interface WithdrawProps {
  head: HeadView;
  /** Id of the entry that says so. */
  id: string | undefined;
  /** Id of the entry that is taken back. */
  entry: string;
  withdraw: FormAction<unknown>;
}

/** Takes an entry back, with a reason. It stays to be read. */
export function WithdrawForm({ head, id, entry, withdraw }: WithdrawProps) {
  return (
    <EntryForm
      action={withdraw}
      head={head}
      id={id}
      hidden={{ supersedes: entry }}
      labels={{ reason: 'Why it does not stand' }}
      button="Take this entry back"
      done="It is taken back."
    >
      <TextField name="reason" title="Why it does not stand" rows={2} />
    </EntryForm>
  );
}
