import { useId } from 'react';
import { ROLES, type Role } from '#core/rota/rota';
import { Fold } from '../frame/fold';
import { ROLE_MEANINGS, ROLE_NAMES } from './people-view';

/** A choice of role, with what each may do behind it. */
export function RoleField({ chosen }: { chosen: Role }) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>
        Role
        <select id={id} name="role" defaultValue={chosen} key={chosen}>
          {ROLES.map((one) => (
            <option key={one} value={one}>
              {ROLE_NAMES[one]}
            </option>
          ))}
        </select>
      </label>
      <Fold title="What each role may do">
        <ul>
          {ROLES.map((one) => (
            <li key={one}>
              {ROLE_NAMES[one]}: {ROLE_MEANINGS[one]}
            </li>
          ))}
        </ul>
      </Fold>
    </>
  );
}
