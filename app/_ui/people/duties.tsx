import { type DutyView, dutySaid } from './people-view';

/** What is somebody's to do, a line each. */
export function Duties({ duties, none }: { duties: DutyView[]; none: string }) {
  if (duties.length === 0) return <p>{none}</p>;
  return (
    <ul>
      {duties.map((duty) => (
        <li key={dutySaid(duty)}>{dutySaid(duty)}</li>
      ))}
    </ul>
  );
}
