import notModelled from '#core/review/not-modelled.json';
import { DEFAULT_PROFILES } from '#core/facility/profiles';
import type { ToleranceProfile } from '#core/facility/stock';
import { FAULTS } from '#core/faults/catalogue';
import type { Fault } from '#core/faults/fault';
import { RULES } from '#core/review/rules/catalogue';
import type { Rule } from '#core/review/rules/rule';
import laws from '#core/water/sources.json';
import { Section } from '../frame/section';
import { VerdictLegend } from '../marks/verdict-legend';
import { type Column, Ledger } from '../table/ledger';
import assumptions from './assumptions.json';
import { type DefaultRow, defaultRows } from './default-rows';
import { Method } from './method';

type Law = (typeof laws)[number];

const FAULT_COLUMNS: Column<Fault>[] = [
  { id: 'title', head: 'Failure mode', cell: (fault) => fault.title },
  { id: 'effect', head: 'What it does', cell: (fault) => fault.effect },
  { id: 'source', head: 'Known from', cell: (fault) => fault.source },
];
const RULE_COLUMNS: Column<Rule>[] = [
  { id: 'title', head: 'What is found wrong', cell: (rule) => rule.title },
  { id: 'grade', head: 'Grade', cell: (rule) => rule.grade },
  { id: 'why', head: 'Why it matters', cell: (rule) => rule.why },
  { id: 'source', head: 'Source', cell: (rule) => rule.source },
];
const DEFAULT_COLUMNS: Column<DefaultRow>[] = [
  { id: 'name', head: 'Figure', cell: (row) => row.name },
  { id: 'value', head: 'Default', figure: true, cell: (row) => row.value },
  { id: 'range', head: 'Plausible range', figure: true, cell: (row) => row.range },
  { id: 'confidence', head: 'Confidence', cell: (row) => row.confidence },
  { id: 'source', head: 'Source', cell: (row) => row.source },
];
const PROFILE_COLUMNS: Column<ToleranceProfile>[] = [
  { id: 'name', head: 'Kind of system', cell: (profile) => profile.name },
  { id: 'limits', head: 'Limits', cell: (profile) => profile.limits.map(limitSaid).join('; ') },
  { id: 'confidence', head: 'Confidence', cell: (profile) => profile.confidence },
  { id: 'source', head: 'Source', cell: (profile) => profile.source },
];
const LAW_COLUMNS: Column<Law>[] = [
  { id: 'title', head: 'Law', cell: (law) => law.title },
  { id: 'equation', head: 'Equation', cell: (law) => law.equation },
  {
    id: 'range',
    head: 'Published for',
    cell: (law) => law.range.map((r) => `${r.argument} ${r.low} to ${r.high}${r.unit ? ` ${r.unit}` : ''}`).join('; '),
  },
  { id: 'source', head: 'Source', cell: (law) => `${law.source}${'note' in law && law.note ? `. ${law.note}` : ''}` },
];

const UNITS: Record<string, string> = {
  temperature: ' °C',
  salinity: '',
  oxygen: ' mg/L',
  level: ' of its water',
  'rise-24h': ' K warmer in a day',
  'fall-24h': ' K colder in a day',
};

function limitSaid({ quantity, above, below, forMin }: ToleranceProfile['limits'][number]): string {
  const bound = above === undefined ? `below ${below}` : `above ${above}`;
  return `${quantity.replace('-24h', '')} ${bound}${UNITS[quantity] ?? ''} for ${forMin} min`;
}

/** The almanac: method, assumptions, catalogues and tables, each with its sources. */
export function HowBody() {
  return (
    <>
      <Section id="limits" title="Limits" note="Read this first.">
        <p>
          <strong>Holdfast switches nothing and is not a protective device.</strong> It reads a description and
          computes; it cannot see whether the description is true.
        </p>
        <p>
          <strong>Treat a long margin as doubtful and a short one as true.</strong> The model is kind where it does not
          know: mixed water, able people, one fault at a time.
        </p>
        <p>Not modelled, though it can kill: {notModelled.join('; ')}.</p>
      </Section>
      <Section id="method" title="Method">
        <Method />
      </Section>
      <Section
        id="verdicts"
        title="Verdicts"
        note="The first that fits decides, in the order: not assessed, dormant, holds, no warning, too late, some hours, covered. Systems are listed gravest first, as here."
      >
        <VerdictLegend />
      </Section>
      <Section id="assumptions" title="Assumptions">
        <ul>
          {assumptions.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </Section>
      <Section
        id="faults"
        wide
        title="Failure modes"
        note={`${FAULTS.length} are simulated, each on everything it can befall, in each operating state that makes a difference.`}
      >
        <Ledger
          caption="The catalogue of failure modes"
          columns={FAULT_COLUMNS}
          rows={[...FAULTS]}
          keyOf={(fault) => fault.id}
        />
      </Section>
      <Section
        id="rules"
        wide
        title="Checks of plans, wiring and paperwork"
        note={`${RULES.length} rules are checked beside the fault cases.`}
      >
        <Ledger caption="The catalogue of rules" columns={RULE_COLUMNS} rows={[...RULES]} keyOf={(rule) => rule.id} />
      </Section>
      <Section
        id="defaults"
        wide
        title="Default figures"
        note="Used where nothing was entered; each use is listed on its system’s page."
      >
        <Ledger
          caption="Default figures with their plausible range"
          columns={DEFAULT_COLUMNS}
          rows={defaultRows()}
          keyOf={(row) => row.name}
        />
      </Section>
      <Section
        id="profiles"
        wide
        title="Tolerance profiles"
        note="Used for stock that names no profile of its own. Beyond a limit for its time without a break is harm."
      >
        <Ledger
          caption="Default tolerance profiles"
          columns={PROFILE_COLUMNS}
          rows={[...DEFAULT_PROFILES]}
          keyOf={(profile) => profile.key}
        />
      </Section>
      <Section
        id="laws"
        wide
        title="Laws"
        note="Outside its published range a law goes on by a documented extension, and the fault case is marked “outside validity”."
      >
        <Ledger
          caption="Laws of water, heat, oxygen and flow"
          columns={LAW_COLUMNS}
          rows={laws}
          keyOf={(law) => law.law}
        />
      </Section>
    </>
  );
}
