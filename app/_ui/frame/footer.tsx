import Link from './link';
import style from './footer.module.css';

/** What stands under every page. @param maySeeMachine whether the person looks after the machine as well */
export function Footer({ maySeeMachine = false }: { maySeeMachine?: boolean }) {
  return (
    <footer className={style.footer}>
      <p>
        <strong>Holdfast switches nothing and is not a protective device.</strong> It computes what a single fault would
        do, from what it has been told. Treat a long margin as doubtful and a short one as true.{' '}
        <Link href="/how">How this is computed</Link>
        {maySeeMachine ? (
          <>
            {' '}
            · <Link href="/machine">Machine</Link>
          </>
        ) : null}
      </p>
    </footer>
  );
}
