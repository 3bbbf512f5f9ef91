'use client';

import { useId } from 'react';
import type { Role } from '#core/rota/rota';
import type { FormAction } from '../form/answer';
import { ActForm } from './act-form';
import { LinkNote } from './link-note';
import { type LinkView, ROLE_NAMES } from './people-view';
import { RoleField } from './role-field';

/** What letting somebody in answers. */
export interface Invited {
  role: Role;
  link: LinkView | null;
}

/** Lets somebody in by their e-mail address. */
export function InviteForm({ site, invite }: { site: string; invite: FormAction<Invited> }) {
  const [email, name] = [useId(), useId()];
  return (
    <ActForm
      action={invite}
      hidden={{ site }}
      button="Let them in"
      done={({ role: given, link }) => (
        <>
          <p>They have access as {ROLE_NAMES[given]}.</p>
          <LinkNote link={link} />
        </>
      )}
    >
      <label htmlFor={name}>
        Name
        <input id={name} name="name" required maxLength={120} autoComplete="off" />
      </label>
      <label htmlFor={email}>
        E-mail address
        <input id={email} name="email" type="email" required maxLength={254} autoComplete="off" />
      </label>
      <RoleField chosen="viewer" />
    </ActForm>
  );
}
