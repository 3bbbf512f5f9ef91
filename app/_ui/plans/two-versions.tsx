import { useId } from 'react';
import { type PlanVersionData, STATUS_WORDS } from './data';
import style from './plans.module.css';

/** Chooses two versions to be compared. */
export function TwoVersions({ versions, from, to }: { versions: PlanVersionData[]; from?: number; to?: number }) {
  const [latest, before] = versions;
  return (
    <form method="get" action="#versions" className={style.choose}>
      <Choice name="from" label="From version" versions={versions} chosen={from ?? before?.version} />
      <Choice name="to" label="to version" versions={versions} chosen={to ?? latest?.version} />
      <button type="submit" className={style.second}>
        Compare
      </button>
    </form>
  );
}

function Choice({
  name,
  label,
  versions,
  chosen,
}: {
  name: string;
  label: string;
  versions: PlanVersionData[];
  chosen?: number;
}) {
  const id = useId();
  return (
    <p className={style.asked}>
      <label htmlFor={id}>{label}</label>
      <select id={id} name={name} defaultValue={chosen}>
        {versions.map(({ version, status }) => (
          <option key={version} value={version}>
            {version}, {STATUS_WORDS[status]}
          </option>
        ))}
      </select>
    </p>
  );
}
