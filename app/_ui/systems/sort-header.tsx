import style from './systems-table.module.css';

interface SortHeaderProps {
  name: string;
  sorted: 'ascending' | 'descending' | 'none';
  /** Sort by this column, or turn its order round; absent for a column that has no order. */
  sort?: () => void;
}

/** The head of a column; a button where the table can be put in its order. */
export function SortHeader({ name, sorted, sort }: SortHeaderProps) {
  if (!sort) {
    return (
      <th scope="col">
        <span className={style.unsorted}>{name}</span>
      </th>
    );
  }
  return (
    <th scope="col" aria-sort={sorted}>
      <button type="button" className={style.sort} onClick={sort}>
        {name}
        <span aria-hidden="true">{sorted === 'none' ? '' : sorted === 'ascending' ? ' ↓' : ' ↑'}</span>
      </button>
    </th>
  );
}
