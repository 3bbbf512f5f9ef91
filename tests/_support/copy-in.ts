import { once } from 'node:events';
import pg from 'pg';
import { from } from 'pg-copy-streams';

/**
 * Has PostgreSQL read a CSV, of whose columns it is told nothing but their names.
 *
 * @param csv   with the names of its columns in the first line
 * @returns     the rows as PostgreSQL read them, every cell a text, an empty one null
 */
export async function copyIn(csv: string): Promise<(string | null)[][]> {
  const columns = (csv.split('\r\n')[0] ?? '').split(',').map((name) => `"${name}" text`);
  const client = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await client.connect();
  try {
    await client.query(`CREATE TEMP TABLE read (n int GENERATED ALWAYS AS IDENTITY, ${columns.join(', ')})`);
    const names = columns.map((column) => column.replace(/ text$/, '')).join(', ');
    const stream = client.query(from(`COPY read (${names}) FROM STDIN WITH (FORMAT csv, HEADER)`));
    stream.end(csv);
    await once(stream, 'finish');
    const { rows } = await client.query({ text: `SELECT ${names} FROM read ORDER BY n`, rowMode: 'array' });
    return rows;
  } finally {
    await client.end();
  }
}
