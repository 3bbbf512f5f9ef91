import { REST_RULES, type RestWarning } from '#core/rota/rest';
import { daySaid } from './rota-view';
import style from './rota.module.css';

/** What of the rota may breach rules about rest. It warns, and hinders nothing. */
export function RestList({ warnings, zone }: { warnings: RestWarning[]; zone: string }) {
  if (warnings.length === 0) return <p>Nothing of the coming four weeks goes against the rules looked at.</p>;
  return (
    <ul className={style.rest}>
      {warnings.map((warning) => (
        <li key={`${warning.person} ${warning.rule}`}>{warningSaid(warning, zone)}</li>
      ))}
    </ul>
  );
}

function warningSaid({ person, rule, at, comesTo, times }: RestWarning, zone: string) {
  const { says, unit, source } = REST_RULES[rule];
  const isRest = rule === 'daily-rest' || rule === 'weekly-rest';
  const figure = `${Math.round(comesTo * 10) / 10}\u00a0${unit}`;
  const date = new Intl.DateTimeFormat('sv-SE', { timeZone: zone }).format(at);
  return (
    <>
      <strong>{person}</strong> may breach {isRest ? '' : 'the limit of '}
      {says}: {isRest ? 'the longest rest is' : 'it comes to'} {figure}
      {rule === 'weekly-hours' ? '' : `, first from ${daySaid(date)}${times > 1 ? `, ${times} times` : ''}`}.
      <span className={style.about}>{source}</span>
    </>
  );
}
