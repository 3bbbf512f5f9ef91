/**
 * The transitions of an alarm after ISA-18.2 and IEC 62682, typed by hand and apart from the product's own table. The standards
 * themselves were not read; the rows follow what is published of them: the state diagram of the PyAutomation documentation
 * ("Alarms API - ISA 18.2"), the four-state table of the Signal K v2 alerts, OPC UA Part 9 (B.1.5, re-alarm; 5.8.17, shelving)
 * and an open course on controllers ("Alarms, Diagnostics and Fault Handling": latching, reset, its two test vectors). T13 and
 * T29 stand in none of them and are a proposal.
 */
export type Standard = 'NORM' | 'UNACK' | 'ACK' | 'RTN' | 'LUNACK' | 'LACK' | 'SHLV' | 'SUPR' | 'OOS';

export type Said =
  | 'condition confirmed'
  | 'condition clears'
  | 'acknowledge'
  | 're-alarm'
  | 'reset'
  | 'shelve'
  | 'designed suppression'
  | 'take out of service'
  | 'ends, condition absent'
  | 'ends, condition present';

interface Row {
  id: string;
  from: Standard[];
  said: Said;
  to: Standard;
  /** Only of latching, or only of other alarms. */
  latching?: boolean;
}

const STANDARD: readonly Row[] = [
  { id: 'T1', from: ['NORM'], said: 'condition confirmed', to: 'UNACK' },
  { id: 'T2', from: ['UNACK'], said: 'acknowledge', to: 'ACK' },
  { id: 'T3', from: ['UNACK'], said: 'condition clears', to: 'RTN', latching: false },
  { id: 'T4', from: ['ACK'], said: 'condition clears', to: 'NORM', latching: false },
  { id: 'T5', from: ['RTN'], said: 'acknowledge', to: 'NORM' },
  { id: 'T6', from: ['RTN'], said: 'condition confirmed', to: 'UNACK' },
  { id: 'T7', from: ['ACK'], said: 're-alarm', to: 'UNACK' },
  { id: 'T8', from: ['UNACK'], said: 'condition clears', to: 'LUNACK', latching: true },
  { id: 'T9', from: ['LUNACK'], said: 'acknowledge', to: 'LACK' },
  { id: 'T10', from: ['ACK'], said: 'condition clears', to: 'LACK', latching: true },
  { id: 'T11', from: ['LACK'], said: 'reset', to: 'NORM' },
  // Either ACK or UNACK may be chosen; UNACK is ours.
  { id: 'T12', from: ['LACK'], said: 'condition confirmed', to: 'UNACK' },
  { id: 'T13', from: ['LUNACK'], said: 'condition confirmed', to: 'UNACK' },
  // T14, a reset while the condition is present changes nothing: there is no row for it.
  { id: 'T15-18', from: ['NORM', 'UNACK', 'ACK', 'RTN'], said: 'shelve', to: 'SHLV' },
  { id: 'T19-22', from: ['NORM', 'UNACK', 'ACK', 'RTN'], said: 'designed suppression', to: 'SUPR' },
  { id: 'T23-26', from: ['NORM', 'UNACK', 'ACK', 'RTN'], said: 'take out of service', to: 'OOS' },
  { id: 'T27', from: ['SHLV', 'SUPR', 'OOS'], said: 'ends, condition absent', to: 'NORM' },
  { id: 'T28', from: ['SHLV', 'SUPR', 'OOS'], said: 'ends, condition present', to: 'UNACK' },
  { id: 'T29', from: ['LUNACK', 'LACK'], said: 'shelve', to: 'SHLV' },
  { id: 'T29', from: ['LUNACK', 'LACK'], said: 'designed suppression', to: 'SUPR' },
  { id: 'T29', from: ['LUNACK', 'LACK'], said: 'take out of service', to: 'OOS' },
];

/** Where the table leads; null when it has no such transition. */
export function led(from: Standard, said: Said, latching: boolean): Standard | null {
  const row = STANDARD.find(
    (one) => one.from.includes(from) && one.said === said && (one.latching === undefined || one.latching === latching),
  );
  return row?.to ?? null;
}
