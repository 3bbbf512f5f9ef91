import { useId } from 'react';
import type { Choice, RecordView } from './record-view';
import style from './record.module.css';

/** Narrows the record down by kind and person; works without scripts, and stands in the address. */
export function RecordFilter({ page: { asked, kinds, people } }: { page: RecordView }) {
  const times = useId();
  return (
    <search>
      <form method="get" className={style.filter}>
        <Choose name="kind" title="Kind" chosen={asked.kind} choices={kinds} />
        <Choose name="by" title="Who" chosen={asked.by} choices={people} />
        <label htmlFor={times} className={style.tick}>
          <input id={times} type="checkbox" name="times" value="utc" defaultChecked={asked.times === 'utc'} />
          with UTC
        </label>
        <button type="submit">Show</button>
      </form>
    </search>
  );
}

interface ChooseProps {
  name: string;
  title: string;
  chosen: string | undefined;
  choices: Choice[];
}

function Choose({ name, title, chosen, choices }: ChooseProps) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <select id={id} name={name} defaultValue={chosen ?? ''}>
        <option value="">all</option>
        {choices.map(({ value, name: said }) => (
          <option key={value} value={value}>
            {said}
          </option>
        ))}
      </select>
    </label>
  );
}
