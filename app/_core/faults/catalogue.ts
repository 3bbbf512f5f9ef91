import type { Fault, Mode, Uncarried } from './fault';
import { MODES } from './mode-list';
import rows from './rows.json';

const LETTERS: readonly string[] = rows.flatMap((group) => group.rows);

/** Order of a row in the catalogue of the trade: first what it belongs to, then its number. */
function placeOf({ row }: Mode): number {
  const letters = row.replace(/\d+$/, '');
  return LETTERS.indexOf(letters) * 100 + Number(row.slice(letters.length));
}

/** Whether the model carries a mode. */
function isCarried(mode: Mode): mode is Fault {
  return !('carried' in mode);
}

/** What a mode belongs to, in words: heat, levels, power … */
export function groupOf(mode: Mode): string {
  return rows.find((group) => group.rows.includes(mode.row.replace(/\d+$/, '')))?.title ?? '';
}

const IN_ORDER: readonly Mode[] = [...MODES].sort((a, b) => placeOf(a) - placeOf(b) || (a.id < b.id ? -1 : 1));

/** Every failure mode that is simulated, in the order of the catalogue page. To add one: write its file in `modes`. */
export const FAULTS: readonly Fault[] = IN_ORDER.filter(isCarried);

/** Every failure mode that the model cannot carry, in the same order. */
export const UNCARRIED: readonly Uncarried[] = IN_ORDER.filter((mode): mode is Uncarried => !isCarried(mode));

/** The modes that people look for by another name, but whose water is that of a fault. */
export function alsoCalled(fault: Pick<Fault, 'id'>): Fault[] {
  return FAULTS.filter((one) => one.sameAs === fault.id);
}
