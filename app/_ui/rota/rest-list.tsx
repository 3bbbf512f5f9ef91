import { REST_RULES, type RestRule, type RestWarning } from '#core/rota/rest';
import { daySaid } from './rota-view';
import style from './rota.module.css';
import { clockFormat } from '../words/clock-format';

/** What of the rota may breach rules about rest, rule by rule. It warns, and hinders nothing. */
export function RestList({ warnings, zone }: { warnings: RestWarning[]; zone: string }) {
  if (warnings.length === 0) return <p>Nothing of the coming four weeks goes against the rules looked at.</p>;
  const rules = [...new Set(warnings.map(({ rule }) => rule))];
  return (
    <ul className={style.rest}>
      {rules.map((rule) => (
        <li key={rule}>
          May breach {isRest(rule) ? '' : 'the limit of '}
          {REST_RULES[rule].says}:{' '}
          {warnings
            .filter((warning) => warning.rule === rule)
            .map((warning) => breachSaid(warning, zone))
            .join('; ')}
          .<span className={style.about}>{REST_RULES[rule].source}</span>
        </li>
      ))}
    </ul>
  );
}

function isRest(rule: RestRule): boolean {
  return rule === 'daily-rest' || rule === 'weekly-rest';
}

function breachSaid({ person, rule, at, comesTo, times }: RestWarning, zone: string): string {
  const figure = `${Math.round(comesTo * 10) / 10}\u00a0${REST_RULES[rule].unit}`;
  if (rule === 'weekly-hours') return `${person}, ${figure}`;
  const date = clockFormat('sv-SE', { timeZone: zone }).format(at);
  const often = times > 1 ? `, ${times} times` : '';
  return `${person}, ${figure}${isRest(rule) ? ' at the longest' : ''}, first ${daySaid(date)}${often}`;
}
