import type { ToleranceProfile } from '#core/facility/stock';
import type { Caution } from '#core/cautions/cautions-for';
import { FAULTS, groupOf } from '#core/faults/catalogue';
import type { Fault, Uncarried } from '#core/faults/fault';
import { RULES } from '#core/review/rules/catalogue';
import type { Rule } from '#core/review/rules/rule';
import type laws from '#core/water/sources.json';
import type { Column } from '../table/ledger';
import type { DefaultRow } from './default-rows';

type Law = (typeof laws)[number];

/** A failure mode in its columns. */
export const FAULT_COLUMNS: Column<Fault>[] = [
  { id: 'group', head: 'Of', cell: groupOf },
  { id: 'title', head: 'Failure mode', cell: (fault) => fault.title },
  { id: 'effect', head: 'What it does', cell: effectOf },
  { id: 'source', head: 'Known from', cell: (fault) => fault.source },
];

/** A failure mode that is not simulated, in its columns. */
export const UNCARRIED_COLUMNS: Column<Uncarried>[] = [
  { id: 'group', head: 'Of', cell: groupOf },
  { id: 'title', head: 'Failure mode', cell: (mode) => mode.title },
  { id: 'effect', head: 'What it does', cell: (mode) => mode.effect },
  { id: 'why', head: 'Why it is not simulated', cell: (mode) => mode.why },
  { id: 'asks', head: 'What is asked for instead', cell: askedFor },
  { id: 'source', head: 'Known from', cell: (mode) => mode.source },
];

/** What a failure mode does; of one whose water is that of another, the one that stands for it. */
function effectOf({ effect, sameAs }: Fault): string {
  const like = FAULTS.find(({ id }) => id === sameAs);
  return like ? `${effect} Simulated as: ${like.title}.` : effect;
}

function askedFor({ asks }: Uncarried): string {
  if (!asks) return 'nothing: the rounds show it in time';
  if ('paper' in asks) return `a dated paper: ${asks.paper.replaceAll('-', ' ')}`;
  return `a rule: ${RULES.find(({ id }) => id === asks.rule)?.title ?? ''}`;
}

/** A caution in its columns. */
export const CAUTION_COLUMNS: Column<Caution>[] = [
  { id: 'hazard', head: 'Hazard', cell: (caution) => caution.hazard },
  { id: 'says', head: 'What is said', cell: (caution) => caution.says },
  { id: 'figures', head: 'Figures', cell: (caution) => caution.figures ?? '' },
  { id: 'source', head: 'Source', cell: (caution) => caution.source },
];

/** A rule in its columns. */
export const RULE_COLUMNS: Column<Rule>[] = [
  { id: 'title', head: 'What is found wrong', cell: (rule) => rule.title },
  { id: 'grade', head: 'Grade', cell: (rule) => rule.grade },
  { id: 'why', head: 'Why it matters', cell: (rule) => rule.why },
  { id: 'source', head: 'Source', cell: (rule) => rule.source },
];

/** A default figure in its columns. */
export const DEFAULT_COLUMNS: Column<DefaultRow>[] = [
  { id: 'name', head: 'Figure', cell: (row) => row.name },
  { id: 'value', head: 'Default', figure: true, cell: (row) => row.value },
  { id: 'range', head: 'Plausible range', figure: true, cell: (row) => row.range },
  { id: 'confidence', head: 'Confidence', cell: (row) => row.confidence },
  { id: 'source', head: 'Source', cell: (row) => row.source },
];

/** A tolerance profile in its columns. */
export const PROFILE_COLUMNS: Column<ToleranceProfile>[] = [
  { id: 'name', head: 'Kind of system', cell: (profile) => profile.name },
  { id: 'limits', head: 'Limits', cell: (profile) => profile.limits.map(limitSaid).join('; ') },
  { id: 'confidence', head: 'Confidence', cell: (profile) => profile.confidence },
  { id: 'source', head: 'Source', cell: (profile) => profile.source },
];

/** A law in its columns. */
export const LAW_COLUMNS: Column<Law>[] = [
  { id: 'title', head: 'Law', cell: (law) => law.title },
  { id: 'equation', head: 'Equation', cell: (law) => law.equation },
  { id: 'range', head: 'Published for', cell: (law) => law.range.map(rangeSaid).join('; ') },
  { id: 'source', head: 'Source', cell: (law) => `${law.source}${'note' in law && law.note ? `. ${law.note}` : ''}` },
];

const LIMIT_UNITS: Record<string, string> = {
  temperature: ' °C',
  oxygen: ' mg/L',
  level: ' of its water',
  'rise-24h': ' K within a day',
  'fall-24h': ' K within a day',
};

function limitSaid({ quantity, above, below, forMin }: ToleranceProfile['limits'][number]): string {
  const bound = above === undefined ? `below ${below}` : `above ${above}`;
  return `${quantity.replace('-24h', '')} ${bound}${LIMIT_UNITS[quantity] ?? ''} for ${forMin} min`;
}

function rangeSaid({ argument, low, high, unit }: Law['range'][number]): string {
  return `${argument} ${low} to ${high}${unit ? ` ${unit}` : ''}`;
}
