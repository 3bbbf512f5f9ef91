'use client';

import { useId } from 'react';
import type { Role } from '#core/rota/rota';
import type { FormAction } from '../form/answer';
import { ActForm } from './act-form';
import { Duties } from './duties';
import { LinkNote } from './link-note';
import { type DutyView, type LinkView, ROLE_NAMES } from './people-view';
import { RoleField } from './role-field';
import style from './people.module.css';

interface Place {
  site: string;
  account: string;
}

/** What somebody leaves behind. */
export interface LeftView {
  duties: DutyView[];
  isEnded: boolean;
}

/** Gives somebody another role. */
export function RoleForm({ site, account, role, change }: Place & { role: Role; change: FormAction<{ role: Role }> }) {
  return (
    <ActForm
      action={change}
      hidden={{ site, account }}
      button="Change the role"
      done={({ role: given }) => <p>The role is now {ROLE_NAMES[given]}.</p>}
    >
      <RoleField chosen={role} />
    </ActForm>
  );
}

interface RotaFormProps extends Place {
  person: string | null;
  rota: { key: string; name: string | null }[];
  link: FormAction<{ person: string | null }>;
}

/** Says whom of the rota somebody is. */
export function RotaForm({ site, account, person, rota, link }: RotaFormProps) {
  const id = useId();
  return (
    <ActForm
      action={link}
      hidden={{ site, account }}
      button="Say so"
      done={({ person: said }) => <p>{said === null ? 'They are nobody of the rota.' : 'It is noted.'}</p>}
    >
      <label htmlFor={id}>
        Person of the rota
        <select id={id} name="person" defaultValue={person ?? ''} key={person}>
          <option value="">nobody</option>
          {rota.map(({ key, name }) => (
            <option key={key} value={key}>
              {name ?? key}
            </option>
          ))}
        </select>
      </label>
    </ActForm>
  );
}

/** Makes somebody a link to join, or to choose a new password. */
export function LinkForm({ site, account, make }: Place & { make: FormAction<LinkView> }) {
  return (
    <ActForm
      action={make}
      hidden={{ site, account }}
      button="Make a new link"
      done={(link) => <LinkNote link={link} />}
    >
      <p>By it they join, or choose a new password when they have joined. Links made before lead nowhere then.</p>
    </ActForm>
  );
}

/** Ends somebody's access. */
export function LetGoForm({ site, account, name, letGo }: Place & { name: string; letGo: FormAction<LeftView> }) {
  return (
    <ActForm
      action={letGo}
      hidden={{ site, account }}
      button={`End the access of ${name}`}
      done={({ duties, isEnded }) => (
        <>
          <p>Their access has ended{isEnded ? ', and they do not sign in any more' : ''}. Still theirs to do:</p>
          <Duties duties={duties} none="Nothing." />
        </>
      )}
    >
      <p>They are out at once. The duties above stay theirs until somebody else is given them.</p>
    </ActForm>
  );
}

/** Erases somebody's name and address. */
export function EraseForm({ site, account, erase }: Place & { erase: FormAction<unknown> }) {
  const id = useId();
  return (
    <ActForm
      action={erase}
      hidden={{ site, account }}
      button="Erase name and address"
      done={() => <p>Name and address are erased.</p>}
    >
      <p>
        Their name and address go from every site, and do not come back. What they did stays in the record, under an id
        that leads to nobody.
      </p>
      <label htmlFor={id} className={style.tick}>
        <input id={id} type="checkbox" required /> I have read this
      </label>
    </ActForm>
  );
}
