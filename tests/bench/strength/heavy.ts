import { setTimeout as wait } from 'node:timers/promises';
import { watchMemory } from '../../drill/memory';
import type { Running } from '../../drill/running';
import type { StrengthSite } from './sites';

/** Bytes of a body that are read at most, as the answer says. */
const MOST_BYTES = 4_000_000;
/** Each kind is sent so often by each of four sources, two at once: as many as are read at once. */
const TIMES = 5;
const SOURCES = 4;
const REST_MS = 2000;

/** Bodies that would take a multiple of their own size if they were parsed, or are too long to be read at all. */
const BODIES: Readonly<Record<string, () => string>> = {
  'of 10 MB': () => pack('{"n":"tank-0/s-0","v":25,"t":1}', 10_000_000),
  'of 10^6 records': () => `[${'{"n":"a","v":1},'.repeat(999_999)}{"n":"a","v":1}]`,
  'of 4 MB of empty records': () => pack('{}', MOST_BYTES),
  'of 4 MB of opened lists': () => '['.repeat(MOST_BYTES),
  'of 4 MB of digits': () => `[{"n":"a","v":1${'0'.repeat(MOST_BYTES - 20)}}]`,
  'of 4 MB in 20,000 records': () => pack(`{"n":"a","v":1,"x":"${'y'.repeat(174)}"}`, 20_000 * 197),
};

/** Sends what is too much, as often as it is let in, and says what was answered and what the web process held meanwhile. */
export async function heavyBodies({ address, web }: Running, sites: readonly StrengthSite[]): Promise<string[]> {
  const before = await peak(web, async () => await wait(REST_MS));
  const lines: string[] = [];
  for (const [what, made] of Object.entries(BODIES)) {
    const body = made();
    const answers = new Map<string, number>();
    const most = await peak(web, async () => {
      const senders = sites.slice(0, SOURCES).flatMap(({ token }) => [token, token]);
      await Promise.all(
        senders.map(async (token) => {
          for (let i = 0; i < TIMES; i++) {
            const said = await answered(address, token, body);
            answers.set(said, (answers.get(said) ?? 0) + 1);
          }
        }),
      );
      await wait(REST_MS);
    });
    const said = [...answers].map(([status, count]) => `${count} answered ${status}`).join(', ');
    lines.push(`    ${what}: ${said}; the web process held ${most.toFixed(0)} MiB at most`);
  }
  return [
    `  bodies that are too much, two at once by each of ${SOURCES}; before them ${before.toFixed(0)} MiB`,
    ...lines,
  ];
}

function pack(record: string, bytes: number): string {
  const records = Math.floor((bytes - 2) / (record.length + 1));
  return `[${`${record},`.repeat(records - 1)}${record}]`;
}

async function peak(web: Running['web'], work: () => Promise<void>): Promise<number> {
  const memory = watchMemory([web]);
  await work();
  return memory.stop().web ?? Number.NaN;
}

/** @returns the status; that the connection was ended where the answer came before the body was over */
async function answered(address: string, token: string, body: string): Promise<string> {
  try {
    const response = await fetch(`${address}/api/readings`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/senml+json' },
      body,
    });
    await response.text();
    return String(response.status);
  } catch {
    return 'by hanging up';
  }
}
