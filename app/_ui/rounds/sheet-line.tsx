import { readingSaid } from '#core/readings/figures';
import { trendOf } from '#core/rounds/trend';
import type { Custom } from '#core/units/shown';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { EntryLog } from './entry-log';
import { LineForm } from './line-form';
import { QuietGate } from './quiet-gate';
import type { EnterAction } from './place-body';
import type { LineView, RoundView } from './round-view';
import style from './rounds.module.css';
import { momentSaid } from '../words/moment';
import { valueSaid } from './said';
import { capital } from '../words/capital';

interface SheetLineProps {
  page: RoundView;
  line: LineView;
  units: Custom;
  enter: EnterAction;
  /** Takes a photo of the line, where that can be done. */
  photo?: ReactNode;
}

/** A line of the sheet: what is looked at and why, what was there before, and what stands or is to be entered. */
export function SheetLine({ page, line, units, enter, photo = null }: SheetLineProps) {
  const { site, round, mayWalk } = page;
  const { check, last, entries } = line;
  const stands = entries.at(-1);
  const form = { site: site.key, round: round.id, line, units, enter };
  return (
    <li>
      <h2 className={style.what}>{check.what}</h2>
      <p className={style.soft}>
        {`${capital(check.why)}.`}
        {last
          ? ` Last: ${valueSaid(check, last.value, units)}, ${momentSaid(last.at, site.zone)}${last.from === 'sensor' ? ' by the sensor' : ''}.`
          : ''}
        {trendSaid(line, units)}
        {check.kind === 'head-count' ? ` Described: ${check.expected}.` : ''}
        {limitsSaid(line, units)}
      </p>
      {stands ? <EntryLog line={line} site={site} units={units} /> : null}
      {photo}
      {check.kind === 'photo' && !stands && photo === null ? (
        <p className={style.soft}>Its photo is taken on the page for walking without a signal.</p>
      ) : null}
      {stands && line.isAbnormal && check.about.system ? (
        <p>
          <Link className={style.go} href={`${siteAddress(site.key)}/incidents/new?system=${check.about.system}`}>
            Open an incident
          </Link>{' '}
          <Link className={style.go} href={siteAddress(site.key, 'alarms')}>
            See its alarms
          </Link>
        </p>
      ) : null}
      {mayWalk && !stands && round.signed === null ? (
        <QuietGate quiet={check.kind === 'test' ? check.quiet : undefined} zone={site.zone}>
          <LineForm key="first" {...form} />
        </QuietGate>
      ) : null}
      {mayWalk && stands && !(check.kind === 'test' && stands.value) ? (
        <Fold title="Correct it">
          <LineForm key={stands.id} {...form} corrects={stands.id} />
        </Fold>
      ) : null}
    </li>
  );
}

/** What stood on the rounds before, and which way it goes. */
function trendSaid({ check, before }: LineView, units: Custom): string {
  const seen = before.filter(({ from }) => from === 'round').map(({ value }) => value);
  const trend = trendOf(check, seen);
  if (check.kind !== 'number' || seen.length < 2) return '';
  const said = seen.map((value) => valueSaid(check, value, units)).reverse();
  return ` Rounds before: ${said.join(', ')}${trend ? `, ${trend}` : ''}.`;
}

function limitsSaid({ check }: LineView, units: Custom): string {
  if (check.kind !== 'number' || !check.alarm) return '';
  const { above, below } = check.alarm;
  const said = (value: number) => readingSaid(check.quantity, units, value);
  if (above !== undefined && below !== undefined) return ` Alarm below ${said(below)} and above ${said(above)}.`;
  return above !== undefined ? ` Alarm above ${said(above)}.` : ` Alarm below ${said(below ?? 0)}.`;
}
