import type { Preview } from './answers';
import style from './import.module.css';

/** What an import would change, in words. */
export function DifferenceList({ preview }: { preview: Preview }) {
  const { site, isNew, systems, groups } = preview;
  const changes = groups.reduce((sum, group) => sum + group.changes.length, 0);
  if (isNew) {
    return (
      <>
        <h2>The file is sound</h2>
        <p>
          {site.name} is new here: {systems} {systems === 1 ? 'system' : 'systems'} would be added and reviewed.
        </p>
      </>
    );
  }
  if (changes === 0) {
    return (
      <>
        <h2>The file is sound, and says what is stored already</h2>
        <p>Importing it changes nothing.</p>
      </>
    );
  }
  return (
    <>
      <h2>
        The file is sound: {changes} {changes === 1 ? 'difference' : 'differences'} from what is stored of {site.name}
      </h2>
      {groups.map((group) => (
        <section key={group.system ?? ''} className={style.group} aria-label={group.name}>
          <h3>{group.name}</h3>
          <ul>
            {group.changes.map((change) => (
              <li key={change.path}>{change.words}</li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}
