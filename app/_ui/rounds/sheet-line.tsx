import { readingSaid } from '#core/readings/figures';
import { trendOf } from '#core/rounds/trend';
import type { Custom } from '#core/units/shown';
import Link from '../frame/link';
import type { ReactNode } from 'react';
import type { Drafting } from '../form/half-typed';
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
import { rateLine } from './rate-said';
import { capital } from '../words/capital';

interface SheetLineProps {
  page: RoundView;
  line: LineView;
  units: Custom;
  enter: EnterAction;
  /** Takes a photo of the line, where that can be done. */
  photo?: ReactNode;
  /** Keeps what is half-typed on a line, or of the correction of an entry. */
  drafts?: ((line: string, corrects?: string) => Drafting) | undefined;
  /** Calls for help by what was seen on it. */
  help?: ReactNode;
}

/** A line of the sheet: what is looked at and why, what was there before, and what stands or is to be entered. */
export function SheetLine({ page, line, units, enter, photo = null, drafts, help = null }: SheetLineProps) {
  const { site, round, mayWalk } = page;
  const { check, last, entries } = line;
  const stands = entries.at(-1);
  const form = { site: site.key, round: round.id, line, units, enter, who: page.self };
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
        {countsSaid(line)}
        {usedSaid(line, units)}
      </p>
      {stands ? <EntryLog line={line} site={site} units={units} /> : null}
      {photo}
      {stands && line.isAbnormal ? <Wrong site={site.key} system={check.about.system} help={help} /> : null}
      {mayWalk && !stands && round.signed === null ? (
        <QuietGate quiet={check.kind === 'test' ? check.quiet : undefined} zone={site.zone}>
          <LineForm key="first" {...form} drafting={drafts?.(check.key)} />
        </QuietGate>
      ) : null}
      {mayWalk && stands && !(check.kind === 'test' && stands.value) ? (
        <Fold title="Correct it">
          <LineForm key={stands.id} {...form} corrects={stands.id} drafting={drafts?.(check.key, stands.id)} />
        </Fold>
      ) : null}
    </li>
  );
}

/** What may follow from what is other than usual. */
function Wrong({ site, system, help }: { site: string; system: string | null; help: ReactNode }) {
  const of = system === null ? '' : `?system=${encodeURIComponent(system)}`;
  return (
    <>
      <p className={style.follows}>
        <Link className={style.go} href={`${siteAddress(site)}/incidents/new${of}`}>
          Open an incident
        </Link>{' '}
        <Link className={style.go} href={siteAddress(site, 'alarms')}>
          See its alarms
        </Link>
      </p>
      {help === null ? null : <Fold title="Call for help">{help}</Fold>}
    </>
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

/** Until when the last calibration counted when the round was begun. */
function countsSaid({ check }: LineView): string {
  return check.kind === 'calibration' && check.due !== undefined ? ` The last one counts until ${check.due}.` : '';
}

/** What is used a day, what it was before, and which way it goes. */
function usedSaid({ check, rate }: LineView, units: Custom): string {
  return rate && (check.kind === 'used' || check.kind === 'doses') ? ` ${rateLine(check, rate, units)}.` : '';
}

function limitsSaid({ check }: LineView, units: Custom): string {
  if (check.kind !== 'number' || !check.alarm) return '';
  const { above, below } = check.alarm;
  const said = (value: number) => readingSaid(check.quantity, units, value);
  if (above !== undefined && below !== undefined) return ` Alarm below ${said(below)} and above ${said(above)}.`;
  return above !== undefined ? ` Alarm above ${said(above)}.` : ` Alarm below ${said(below ?? 0)}.`;
}
