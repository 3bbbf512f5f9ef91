import { useId } from 'react';
import { VERDICT_WORDS } from '#core/review/words';
import { VERDICT_MEANINGS } from '../words/verdict-meanings';
import type { Address } from './address-bar';
import style from './systems-table.module.css';

interface SystemsFilterProps {
  sites: readonly string[];
  kinds: readonly string[];
  address: Address;
  change: (part: Partial<Address>) => unknown;
  /** How many systems are left, in words. */
  left: string;
}

/** Narrow the table down by words, site, kind and verdict. */
export function SystemsFilter({ sites, kinds, address, change, left }: SystemsFilterProps) {
  const find = useId();
  const verdicts = VERDICT_MEANINGS.map(({ verdict }) => ({ value: verdict, name: VERDICT_WORDS[verdict] }));
  const plain = (names: readonly string[]) => names.map((name) => ({ value: name, name }));
  return (
    <search className={style.filter}>
      <label htmlFor={find}>
        Find
        <input
          id={find}
          type="search"
          value={address.find}
          onChange={(event) => void change({ find: event.target.value })}
        />
      </label>
      {sites.length > 1 ? (
        <Choose title="Site" value={address.site} options={plain(sites)} change={(site) => change({ site })} />
      ) : null}
      <Choose title="Kind" value={address.kind} options={plain(kinds)} change={(kind) => change({ kind })} />
      <Choose title="As claimed" value={address.verdict} options={verdicts} change={(verdict) => change({ verdict })} />
      <Order address={address} change={change} />
      <output className={style.count}>{left}</output>
    </search>
  );
}

const ORDERS: Record<string, string> = {
  worst: 'worst first',
  tested: 'worst as tested first',
  spare: 'least to spare first',
  tonight: 'least to spare tonight first',
  now: 'most open now first',
  findings: 'most to do first',
  name: 'by name',
  site: 'by site',
  kind: 'by kind',
};

/** The table's order: also by what has no column of its own, and where a phone has no column heads to press. */
function Order({ address, change }: Pick<SystemsFilterProps, 'address' | 'change'>) {
  const id = useId();
  return (
    <label htmlFor={id} className={style.order}>
      Order
      <select
        id={id}
        value={address.sort.id}
        onChange={(event) => void change({ sort: { id: event.target.value, desc: false } })}
      >
        {Object.entries(ORDERS).map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

interface ChooseProps {
  title: string;
  value: string;
  options: { value: string; name: string }[];
  change: (value: string) => unknown;
}

function Choose({ title, value, options, change }: ChooseProps) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <select id={id} value={value} onChange={(event) => void change(event.target.value)}>
        <option value="">all</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.name}
          </option>
        ))}
      </select>
    </label>
  );
}
