import pg from 'pg';

/**
 * Counts what is asked of the database meanwhile, whoever asks.
 *
 * @param work   what to do
 * @returns      the statements, in order
 */
export async function countQueries(work: () => Promise<unknown>): Promise<string[]> {
  const asked: string[] = [];
  const { query } = pg.Client.prototype;
  pg.Client.prototype.query = function listening(this: pg.Client, ...words: unknown[]) {
    const [first] = words;
    asked.push(typeof first === 'string' ? first : String((first as { text?: string }).text));
    return Reflect.apply(query, this, words);
  } as typeof query;
  try {
    await work();
  } finally {
    pg.Client.prototype.query = query;
  }
  return asked;
}
