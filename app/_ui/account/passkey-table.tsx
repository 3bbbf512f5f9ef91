import type { FormAction } from '../form/answer';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';
import style from '../sign-in/sign-in.module.css';
import { type Column, Ledger } from '../table/ledger';
import { Instant } from './instant';

/** A passkey of one's own. */
export interface Passkey {
  id: string;
  name: string;
  createdAt: Date;
  usedAt: Date | null;
}

/**
 * One's passkeys.
 * @param rename gives one another name
 * @param remove removes one
 */
export function PasskeyTable({
  passkeys,
  rename,
  remove,
}: {
  passkeys: Passkey[];
  rename: FormAction<unknown>;
  remove: FormAction<unknown>;
}) {
  if (passkeys.length === 0) return <p>You have none yet.</p>;
  const columns: Column<Passkey>[] = [
    { id: 'name', head: 'Name', cell: ({ name }) => name },
    { id: 'added', head: 'Added', cell: ({ createdAt }) => <Instant at={createdAt} /> },
    { id: 'used', head: 'Last used', cell: ({ usedAt }) => (usedAt === null ? 'never' : <Instant at={usedAt} />) },
    {
      id: 'change',
      head: 'Change',
      cell: ({ id, name }) => (
        <div className={style.row}>
          <PersonForm send={remove} hidden={{ id }} button={`Remove ${name}`} look="plain" />
          <details>
            <summary>Rename {name}</summary>
            <PersonForm send={rename} hidden={{ id }} button="Keep the name" look="second">
              <Field label={`Name of ${name}`} name="name" defaultValue={name} required maxLength={80} />
            </PersonForm>
          </details>
        </div>
      ),
    },
  ];
  return <Ledger caption="In the order they were added" columns={columns} rows={passkeys} keyOf={({ id }) => id} />;
}
