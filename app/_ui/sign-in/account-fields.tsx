import { Field } from './field';

/** Name, address and password of a new account. */
export function AccountFields({ isNew = false }: { isNew?: boolean }) {
  return (
    <>
      {isNew ? (
        <>
          <Field label="Name" name="name" autoComplete="name" required maxLength={120} />
          <Field label="E-mail address" name="email" type="email" autoComplete="username" required maxLength={254} />
        </>
      ) : null}
      <NewPassword />
    </>
  );
}

/** A password that is chosen. */
export function NewPassword({ label = 'Password' }: { label?: string }) {
  return (
    <Field
      label={label}
      name="password"
      type="password"
      autoComplete="new-password"
      required
      minLength={15}
      note="15 characters at least. Several words you remember, or what a password keeper makes; paste it if you like."
    />
  );
}
