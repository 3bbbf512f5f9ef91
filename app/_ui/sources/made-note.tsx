import style from './sources.module.css';
import type { MadeView } from './sources-view';

/** The token of a source that was just made, and how it is used. It is shown here and nowhere again. */
export function MadeNote({ made }: { made: MadeView }) {
  const pack = JSON.stringify([{ n: made.example ?? 'system/sensor', v: 25.3 }]);
  return (
    <>
      <p>
        {made.name} may send readings with this token. It is shown only now, so copy it before you leave; whoever has it
        can send readings in its name.
      </p>
      <code className={style.token}>{made.token}</code>
      <p>To try it, from a machine that reaches Holdfast:</p>
      <pre className={style.lines}>
        {[
          `curl ${made.address} \\`,
          `  -H 'Authorization: Bearer ${made.token}' \\`,
          "  -H 'Content-Type: application/senml+json' \\",
          `  -d '${pack}'`,
        ].join('\n')}
      </pre>
    </>
  );
}
