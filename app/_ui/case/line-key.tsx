import type { Names } from '../words/names';
import style from './plot.module.css';

interface LineKeyProps {
  tanks: string[];
  mainKey: string;
  main: string;
  hub: string | undefined;
  names: Names;
}

/** Which line of the plot is which tank. */
export function LineKey({ tanks, mainKey, main, hub, names }: LineKeyProps) {
  const others = tanks.filter((t) => t !== mainKey && t !== hub);
  return (
    <ul className={style.key} aria-label="Lines of the plot">
      <Line rank="main" name={main} />
      {hub !== undefined && hub !== mainKey && tanks.includes(hub) ? (
        <Line rank="second" name={names.tank(hub)} />
      ) : null}
      {others.length > 0 ? (
        <Line
          rank="other"
          name={others.length === 1 ? names.tank(others[0] ?? '') : `the other ${others.length} tanks`}
        />
      ) : null}
    </ul>
  );
}

function Line({ rank, name }: { rank: string; name: string }) {
  return (
    <li>
      <svg viewBox="0 0 30 10" width="30" height="10" aria-hidden="true">
        <path className={style.track} data-rank={rank} d="M0 5H30" />
      </svg>
      {name}
    </li>
  );
}
