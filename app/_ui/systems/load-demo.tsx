'use client';

import Link from '../frame/link';
import { useActionState } from 'react';
import type { FileAction, FileAnswer } from '../import/answers';
import { type Column, Ledger } from '../table/ledger';
import style from './empty-site.module.css';

/** What loading the demo gives back: how its people sign in, once. */
interface DemoLoaded {
  people: { role: string; email: string; password: string }[];
}

/** The server action that loads the demo. */
export type DemoAction = FileAction<DemoLoaded>;

/** The button that loads the demo, and then how its people sign in: nothing else will say so again. */
export function LoadDemo({ load }: { load: DemoAction }) {
  const [answer, run, isLoading] = useActionState(
    (_before: FileAnswer<DemoLoaded> | null, form: FormData): Promise<FileAnswer<DemoLoaded> | null> =>
      load(null, form),
    null,
  );
  if (answer?.ok) return <DemoPeople people={answer.value.people} />;
  return (
    <form action={run}>
      <button type="submit" className={style.first} disabled={isLoading}>
        {isLoading ? 'Loading the demo…' : 'Load the demo'}
      </button>
      <p>A harbour-town aquarium and a shop with two branches, all invented, well and badly protected.</p>
      <p role="status">{answer?.ok === false ? answer.said : ''}</p>
    </form>
  );
}

type Person = DemoLoaded['people'][number];

const COLUMNS: Column<Person>[] = [
  { id: 'role', head: 'Role', cell: ({ role }) => role },
  { id: 'email', head: 'E-mail address', cell: ({ email }) => email },
  { id: 'password', head: 'Password', cell: ({ password }) => <code>{password}</code> },
];

function DemoPeople({ people }: DemoLoaded) {
  return (
    <div role="status" className={style.people}>
      <h2>The demo is loaded</h2>
      {people.length > 0 ? (
        <Ledger
          caption="Who may sign in to look at it. Write the passwords down: they are said this once."
          columns={COLUMNS}
          rows={people}
          keyOf={({ role }) => role}
        />
      ) : null}
      <p>
        <Link href="/">See the systems</Link>
      </p>
    </div>
  );
}
