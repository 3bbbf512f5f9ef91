import type { SensorQuantity } from '../../facility/system';
import { differenceSaid, readingSaid } from '../../readings/figures';
import type { Custom } from '../../units/shown';
import type { AlarmSource, RaisedBy } from '../definition';

/** What is needed to put a limit into words. */
export interface Spoken {
  /** What the sensor it watches measures; undefined where there is none, or none is known. */
  quantity?: SensorQuantity | undefined;
  custom: Custom;
  /** Limits it is held to that its definition does not say itself: a watts range. */
  limits?: { above?: number | undefined; below?: number | undefined } | undefined;
}

/** When an alarm is true, as it follows on “calls”: "above 26.5 °C", "when it rises by more than 0.5 °C an hour". */
export function callsWhen(on: RaisedBy, spoken: Spoken): string {
  switch (on.kind) {
    case 'sensor':
      return spoken.quantity === 'leak' ? 'when wet' : bounds(spoken.limits ?? on, spoken);
    case 'watts':
      return spoken.limits ? bounds(spoken.limits, spoken) : 'outside its watts range';
    case 'rate':
      return `when it ${either(
        on.risesPerHour === undefined ? null : `rises by more than ${apart(on.risesPerHour, spoken)} an hour`,
        on.fallsPerHour === undefined ? null : `falls by more than ${apart(on.fallsPerHour, spoken)} an hour`,
      )}, over ${minutes(on.overMin)}`;
    case 'deviation':
      return `when the two are more than ${apart(on.by, spoken)} apart`;
    case 'frozen':
      return on.within === 0
        ? 'when it reports the same value again and again'
        : `when what it reports moves by no more than ${apart(on.within, spoken)}`;
    case 'run-limit':
      return `when it ${either(
        on.longerThanMin === undefined ? null : `runs longer than ${minutes(on.longerThanMin)}`,
        on.startsPerHour === undefined ? null : `starts more than ${on.startsPerHour} times in an hour`,
      )}`;
    case 'state-outstayed':
      return on.afterMin === undefined
        ? `when ${on.state.replaceAll('-', ' ')} lasts longer than it is meant to`
        : `when ${on.state.replaceAll('-', ' ')} lasts longer than ${minutes(on.afterMin)}`;
    case 'silent':
      return 'when nothing comes from its gateway';
    case 'silent-sensor':
      return 'when nothing usable comes from its sensor';
    case 'by-hand':
      return 'since somebody called for help';
  }
}

/** What kind of alarm it is, by what it watches and what its sensor measures. */
export function kindWords(on: AlarmSource, quantity: SensorQuantity | undefined): string {
  if (on.kind !== 'sensor') return KIND_WORDS[on.kind];
  return quantity === 'leak' || quantity === 'level' ? quantity : KIND_WORDS.sensor;
}

const KIND_WORDS: Readonly<Record<AlarmSource['kind'], string>> = {
  sensor: 'limit',
  rate: 'rate',
  deviation: 'deviation',
  frozen: 'frozen',
  watts: 'watts range',
  'run-limit': 'run limit',
  'state-outstayed': 'state outstayed',
  silent: 'silent gateway',
  'silent-sensor': 'silent sensor',
};

function bounds({ above, below }: { above?: number | undefined; below?: number | undefined }, spoken: Spoken): string {
  const said = (value: number) =>
    spoken.quantity === undefined ? String(value) : readingSaid(spoken.quantity, spoken.custom, value);
  return either(
    above === undefined ? null : `above ${said(above)}`,
    below === undefined ? null : `below ${said(below)}`,
  );
}

function apart(value: number, { quantity, custom }: Spoken): string {
  return quantity === undefined ? String(value) : differenceSaid(quantity, custom, value);
}

function either(...parts: (string | null)[]): string {
  return parts.filter((part) => part !== null).join(' or ');
}

function minutes(min: number): string {
  return min >= 120 && min % 60 === 0 ? `${min / 60}\u00a0h` : `${min}\u00a0min`;
}

/**
 * A value that was worked out of readings, as it is compared: "0.8 °C an hour", "0.6 °C apart", "7 starts in an hour".
 *
 * @returns   null for one that is compared as it was read
 */
export function workedSaid(
  on: RaisedBy,
  quantity: SensorQuantity | undefined,
  value: number,
  custom: Custom,
): string | null {
  const said = () => apart(value, { quantity, custom });
  if (on.kind === 'rate') return `${said()} an hour`;
  if (on.kind === 'deviation') return `${said()} apart`;
  return on.kind === 'run-limit' && on.startsPerHour !== undefined ? `${value} starts in an hour` : null;
}
