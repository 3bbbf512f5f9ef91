import Link from '../frame/link';
import type { ReactNode } from 'react';
import { CAUTIONS } from '#core/cautions/cautions-for';
import { DEFAULT_PROFILES } from '#core/facility/profiles';
import { FAULTS, UNCARRIED } from '#core/faults/catalogue';
import { RULES } from '#core/review/rules/catalogue';
import laws from '#core/water/sources.json';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { Ledger } from '../table/ledger';
import {
  CAUTION_COLUMNS,
  DEFAULT_COLUMNS,
  FAULT_COLUMNS,
  LAW_COLUMNS,
  PROFILE_COLUMNS,
  RULE_COLUMNS,
  UNCARRIED_COLUMNS,
} from './columns';
import { defaultRows } from './default-rows';

/** The tables of what is simulated, checked, filled in and taken for law. */
export function Almanac() {
  return (
    <>
      <Catalogues />
      <Figures />
    </>
  );
}

function Catalogues() {
  return (
    <>
      <Table
        id="faults"
        title="Failure modes"
        count={FAULTS.length}
        note="Each is simulated on everything it can befall, in each operating state that makes a difference."
      >
        <Ledger caption="Failure modes" columns={FAULT_COLUMNS} rows={[...FAULTS]} keyOf={({ id }) => id} />
      </Table>
      <Table
        id="not-carried"
        title="Failure modes that the model cannot carry"
        count={UNCARRIED.length}
        note="Named all the same: the review asks for a paper, or checks the plans, where they can befall a system."
      >
        <Ledger
          caption="Failure modes that the model cannot carry"
          columns={UNCARRIED_COLUMNS}
          rows={[...UNCARRIED]}
          keyOf={({ id }) => id}
        />
      </Table>
      <Table
        id="cautions"
        title="Cautions"
        count={CAUTIONS.length}
        note="Said where the work is: on the finding, the fault case, the state, the alarm and the round."
      >
        <Ledger caption="Cautions" columns={CAUTION_COLUMNS} rows={[...CAUTIONS]} keyOf={({ key }) => key} />
      </Table>
      <Table
        id="rules"
        title="Rules"
        count={RULES.length}
        note="Checks of plans, wiring and paperwork, beside the fault cases."
      >
        <Ledger caption="Rules" columns={RULE_COLUMNS} rows={[...RULES]} keyOf={({ id }) => id} />
      </Table>
    </>
  );
}

function Figures() {
  const defaults = defaultRows();
  return (
    <>
      <Table
        id="defaults"
        title="Default figures"
        count={defaults.length}
        note="Used where nothing was entered; each use is listed on its system’s page."
      >
        <Ledger caption="Default figures" columns={DEFAULT_COLUMNS} rows={defaults} keyOf={({ name }) => name} />
      </Table>
      <Table
        id="profiles"
        title="Tolerance profiles"
        count={DEFAULT_PROFILES.length}
        note="Used for stock that names none of its own. Beyond a limit for its time without a break is harm."
      >
        <Ledger
          caption="Tolerance profiles"
          columns={PROFILE_COLUMNS}
          rows={[...DEFAULT_PROFILES]}
          keyOf={({ key }) => key}
        />
      </Table>
      <Table
        id="laws"
        title="Laws"
        count={laws.length}
        note={
          <>
            Outside its published range a law goes on by a documented extension, and the fault case is marked “outside
            validity”. Tables made of them stand in the <Link href="/almanac">Almanac</Link>.
          </>
        }
      >
        <Ledger
          caption="Laws of water, heat, oxygen and flow"
          columns={LAW_COLUMNS}
          rows={laws}
          keyOf={({ law }) => law}
        />
      </Table>
    </>
  );
}

interface TableProps {
  id: string;
  title: string;
  count: number;
  note: ReactNode;
  children: ReactNode;
}

function Table({ id, title, count, note, children }: TableProps) {
  return (
    <Section id={id} wide title={title} note={note}>
      <Fold title={`Show all ${count}`}>{children}</Fold>
    </Section>
  );
}
