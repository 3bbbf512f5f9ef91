import Link from '../frame/link';
import type { OpenInput } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { thingAddress } from '../describe/thing-address';
import { type Column, Ledger } from '../table/ledger';
import { rangeSaid } from './figure-said';

/** Nouns of a description by the list they stand in. */
const NOUNS: Readonly<Record<string, string>> = {
  tanks: 'tank',
  equipment: 'equipment',
  sensors: 'sensor',
  stock: 'stock',
  rooms: 'room',
  circuits: 'circuit',
  people: 'person',
  systems: 'system',
};

interface OpenFiguresProps {
  inputs: readonly OpenInput[];
  askNext: string | null;
  units: Custom;
  /** Key of the site, for those who may describe it: each figure then leads to where it is entered. */
  describeAt: string | null;
}

/** Figures whose plausible range alone would change a verdict, the one to measure first on top. */
export function OpenFigures({ inputs, askNext, units, describeAt }: OpenFiguresProps) {
  const rows = openOf(inputs, askNext);
  const columns: Column<OpenInput>[] = [
    {
      id: 'name',
      head: 'Figure',
      cell: ({ path, name }) => (describeAt === null ? name : <Link href={addressOf(describeAt, path)}>{name}</Link>),
    },
    { id: 'range', head: 'May be', cell: (input) => rangeSaid(units, input) },
    { id: 'source', head: 'Because', cell: ({ source }) => source },
  ];
  return (
    <Ledger
      caption="Each of these alone, at the bad end of its range, would change the verdict of a grave case that is unsure."
      columns={columns}
      rows={rows}
      keyOf={({ path }) => path}
    />
  );
}

/** The figures that would change a verdict: the one to ask for next first, then the widest. */
export function openOf(inputs: readonly OpenInput[], askNext: string | null): OpenInput[] {
  const spread = ({ value, low, high }: OpenInput) =>
    low === undefined || high === undefined || !value ? Number.POSITIVE_INFINITY : (high - low) / Math.abs(value);
  const first = ({ path }: OpenInput) => Number(path === askNext);
  return inputs
    .filter(({ changes }) => changes.length > 0)
    .sort((a, b) => first(b) - first(a) || spread(b) - spread(a));
}

/** Where the thing that a figure belongs to is described: `systems/reef/tanks/sump/rimMm` is the tank `sump` of `reef`. */
function addressOf(site: string, path: string): string {
  const [list = '', key = '', inner = '', innerKey] = path.split('/');
  const noun = NOUNS[inner];
  if (list === 'systems' && noun && innerKey !== undefined) return thingAddress(site, noun, key, innerKey);
  return NOUNS[list] ? thingAddress(site, NOUNS[list], null, key) : thingAddress(site, 'site', null, site);
}
