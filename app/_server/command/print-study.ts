import 'server-only';
import { namedHarm } from '#core/review/named-harm';
import type { System } from '#core/facility/system';
import type { Harm, Verdict } from '#core/review/result';
import type { Effect, Fix, Part, Study } from '#core/review/study';
import { harmWords, lower, span, VERDICT_WORDS } from '#core/review/words';

/** Lines of each kind that are printed in full; the rest is counted. */
const SHOWN = 5;

/** The longer look at a system as plain text. */
export function printStudy({ name, tanks, equipment }: System, study: Study): string {
  const { minimalSets, fixFirst, drift, tried, cut } = study;
  // As in the document: what comes out the same as the fault alone tells nothing new.
  const combinations = study.combinations.filter((one) => one.verdict !== one.alone);
  const named = (list: readonly { key: string; name: string }[], key: string) =>
    list.find((one) => one.key === key)?.name ?? key;
  const outcome = (verdict: Verdict, harm: Harm | null, spareS: number | null) =>
    `${VERDICT_WORDS[verdict]}${harm ? `, ${harmWords(namedHarm(tanks, harm))}` : ''}${spareS === null ? '' : `, ${spareWords(spareS)}`}`;
  return [
    `${name}: the longer look, ${tried} fault cases and combinations tried`,
    `  Smallest sets that do harm (down to "${VERDICT_WORDS[cut]}"): ${minimalSets.length}`,
    ...some(
      minimalSets,
      (set) =>
        `${partsWords(set.parts, set.state)}: ${outcome(set.verdict, set.harm, set.spareS)}${often(set.perYear)}`,
    ),
    `  Combinations that come out otherwise than the fault alone: ${combinations.length}`,
    ...some(combinations, (one) => {
      const because = one.because && ` (${one.because})`;
      return `${partsWords(one.parts, one.state)}${because}: ${VERDICT_WORDS[one.alone]} alone, ${outcome(one.verdict, one.harm, one.spareS)}${often(one.perYear)}`;
    }),
    `  What to fix first: ${fixFirst.open} fault ${fixFirst.open === 1 ? 'case is' : 'cases are'} not covered${fixFirst.open > 0 && fixFirst.alone.length === 0 ? ', and none of the changes that were tried makes one less grave' : ''}`,
    ...some(fixFirst.alone, fixWords),
    ...fixFirst.order.map(({ fix, wins, left, losses }, i) => {
      const title = fixFirst.alone.find(({ id }) => id === fix)?.title ?? fix;
      return `    ${i + 1}. ${title}: ${wins} won, ${left} left${losses.length > 0 ? `; graver: ${losses.map(effectWords).join('; ')}` : ''}`;
    }),
    ...drift.map(
      ({ tank, unit, nowKg, carriesKg }) =>
        `  ${named(tanks, tank)} without ${named(equipment, unit)}: ${kg(nowKg)} kg today, the night is carried up to ${kg(carriesKg)} kg`,
    ),
    '',
  ].join('\n');
}

function some<T>(list: readonly T[], words: (one: T) => string): string[] {
  const rest = list.length - SHOWN;
  return [
    ...list.slice(0, SHOWN).map((one) => `    ${words(one)}`),
    ...(rest > 0 ? [`    … and ${rest} more (--json shows all)`] : []),
  ];
}

function partsWords(parts: readonly Part[], state: string): string {
  const words = (part: Part) =>
    part.kind === 'fault' ? `${part.thing.name}: ${lower(part.title)}` : `${part.name} does not work`;
  return `${parts.map(words).join(' + ')}${state === 'normal' ? '' : `, during ${state.replace('-', ' ')}`}`;
}

function spareWords(spareS: number): string {
  return spareS < 0 ? `short by ${span(spareS)}` : `${span(spareS)} to spare`;
}

/** An order of magnitude: more digits would say more than anybody knows. */
function often(perYear: number | null): string {
  return perYear === null || perYear <= 0
    ? ''
    : `, about 10^${Math.round(Math.log10(perYear))} a year (rare-event product)`;
}

function fixWords({ title, column, wins, losses }: Fix): string {
  const graver = losses.length > 0 ? `; graver: ${losses.map(effectWords).join('; ')}` : '';
  return `${title}${column === 'tested' ? ' (as tested)' : ''}: ${wins.length} won${graver}`;
}

function effectWords({ title, from, to, befalls }: Effect): string {
  return `${title}, ${VERDICT_WORDS[from]} → ${VERDICT_WORDS[to]}${befalls.to ? ` (${befalls.to})` : ''}`;
}

function kg(value: number): string {
  return String(Number(value.toPrecision(2)));
}
