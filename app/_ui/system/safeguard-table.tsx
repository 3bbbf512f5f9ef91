import Link from '../frame/link';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { isOff, isTested, lastTest, safeguardsOf } from '#core/plans/credit';
import type { Safeguard } from '#core/plans/safeguard';
import { safeguardAddress } from '../safeguards/safeguard-view';
import { type Column, Ledger } from '../table/ledger';

/** The safeguards a system leans on, with their tests. */
export function SafeguardTable({ facility, system, on }: { facility: Facility; system: System; on: string }) {
  const columns: Column<Safeguard>[] = [
    { id: 'name', head: 'Safeguard', cell: (s) => <Link href={addressOf(facility, system, s)}>{s.name}</Link> },
    { id: 'kind', head: 'Kind', cell: (s) => s.kind.replace('-', ' ') },
    { id: 'state', head: 'State', cell: (s) => stateOf(s, on) },
    { id: 'last', head: 'Last test', cell: (s) => lastSaid(s, on) },
    { id: 'every', head: 'Test every', figure: true, cell: (s) => `${s.testEveryDays} days` },
  ];
  return (
    <Ledger
      caption={`As of ${on}. Its own and the site’s.`}
      columns={columns}
      rows={safeguardsOf(facility, system)}
      keyOf={(s) => s.key}
    />
  );
}

/** Where its tests are recorded. */
function addressOf({ site }: Facility, system: System, safeguard: Safeguard): string {
  const owner = system.safeguards.includes(safeguard) ? system : null;
  return safeguardAddress(site.key, { system: owner, key: safeguard.key });
}

function stateOf(safeguard: Safeguard, on: string) {
  const { off } = safeguard;
  if (off && isOff(safeguard, on)) return `off until ${off.until}: ${off.why} (${off.by})`;
  return isTested(safeguard, on) ? 'tested' : <strong>untested</strong>;
}

function lastSaid(safeguard: Safeguard, on: string): string {
  const last = lastTest(safeguard, on);
  return last ? `${last.on}, ${last.result}` : 'none';
}
