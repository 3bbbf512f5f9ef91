import type { ChangeEvent, ChangeState } from '#core/rota/change';
import type { RestWarning } from '#core/rota/rest';
import { momentSaid, timeSaid } from '../words/moment';
import { daySaid, ON_WORDS } from './rota-view';

interface SpanView {
  from: number;
  to: number;
}

interface TurnView {
  date: string;
  times: string | null;
  kind: 'on-site' | 'on-call' | null;
}

/** Leave or a swap; instants in ms. */
export interface ChangeView {
  id: string;
  kind: 'leave' | 'swap';
  person: string;
  takes: string | null;
  from: number | null;
  to: number | null;
  turn: TurnView | null;
  back: TurnView | null;
  why: string | null;
  askedBy: string;
  askedAt: number;
  state: ChangeState;
  events: { kind: ChangeEvent; by: string; at: number; why: string | null }[];
  may: ChangeEvent[];
  isOwn: boolean;
  effect: {
    nobody: SpanView[];
    nobodyMin: number;
    lacking: { name: string; spans: SpanView[] }[];
    rest: RestWarning[];
  } | null;
}

export interface TurnOfferedView {
  value: string;
  name: string;
  kind: 'on-site' | 'on-call';
  start: number;
  end: number;
}

/** The leave and swaps of a site. */
export interface ChangesView {
  site: { key: string; name: string; zone: string };
  open: ChangeView[];
  past: ChangeView[];
  offered: {
    leaveOf: { key: string; name: string }[];
    gives: TurnOfferedView[];
    takers: { key: string; name: string }[];
    backs: TurnOfferedView[];
  };
  ids: { leave: string; swap: string };
  mayAsk: boolean;
}

/** How a change stands, in words. */
export const CHANGE_WORDS: Readonly<Record<ChangeState, string>> = {
  asked: 'asked for',
  agreed: 'agreed, not yet approved',
  declined: 'declined',
  approved: 'approved',
  refused: 'refused',
  withdrawn: 'withdrawn',
  'taken-back': 'approved, then taken back',
};

/** What a change is, in a sentence without its end. */
export function changeSaid({ kind, person, takes, from, to, turn, back }: ChangeView, zone: string): string {
  if (kind === 'leave')
    return `Leave of ${person}${from === null || to === null ? '' : `, ${momentSaid(from, zone)} to ${momentSaid(to, zone)}`}`;
  const part = from === null || to === null ? '' : `, from ${momentSaid(from, zone)} to ${momentSaid(to, zone)}`;
  const what = part === '' ? 'the turn' : 'a part of the turn';
  const first = `${takes ?? ''} takes ${what} of ${person}${turn ? `: ${turnSaid(turn)}` : ''}${part}`;
  return back ? `${first}; ${person} takes in return ${turnSaid(back)}` : first;
}

/** A turn that is offered: "Fri 27 Nov, 22:00 to 06:00, on call, Sam". */
export function offeredSaid({ name, kind, start, end }: TurnOfferedView, zone: string): string {
  return `${momentSaid(start, zone)} to ${timeSaid(end, zone)}, ${ON_WORDS[kind]}, ${name}`;
}

function turnSaid({ date, times, kind }: TurnView): string {
  return times === null || kind === null
    ? `${daySaid(date)}, a shift that is described no more`
    : `${daySaid(date)}, ${times}, ${ON_WORDS[kind]}`;
}
