'use client';

import type { Signer } from '#core/incidents/incident';
import { SIGNER_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { EntryForm } from './entry-form';
import { ChoiceField, OptionalLine } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';

interface SignFormProps {
  head: HeadView;
  id: string | undefined;
  /** As what the person may sign. */
  signers: readonly Signer[];
  /** Digest of the entries that were shown. */
  sha256: string;
  sign: FormAction<unknown>;
}

/** Signs what stands on the page. What was added meanwhile is looked at first. */
export function SignForm({ head, id, signers, sha256, sign }: SignFormProps) {
  const options = Object.fromEntries(signers.map((signer) => [signer, SIGNER_WORDS[signer]]));
  return (
    <div className={style.form}>
      <EntryForm
        action={sign}
        head={head}
        id={id}
        hidden={{ sha256 }}
        labels={{ as: 'Sign as', why: 'Why nobody else signs' }}
        button="Sign the investigation"
        done="Signed."
      >
        <ChoiceField name="as" title="Sign as" start={signers.at(-1)} options={options} />
        {signers.includes('sole-keeper') ? (
          <OptionalLine name="why" title="Why nobody else signs" hint="For a sole keeper." />
        ) : null}
      </EntryForm>
    </div>
  );
}
