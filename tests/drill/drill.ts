import { setTimeout as wait } from 'node:timers/promises';
import { killInTurn, type Victim } from './kill-in-turn';
import { keepWriting } from './lives';
import { startHoldfast } from './running';
import { closeToll, tollOf, type Toll } from './toll';

// `npm run drill -- [N]`: Holdfast as `npm start` starts it, over a folder that is thrown away, written to all the time by two
// processes and asked for pages; web, worker, database and writer killed without warning in turn, N times in all. Ends with 0
// when nothing that was answered as stored is missing or doubled and every record is whole.

const kills = Number(process.argv[2] ?? 50);
/** What has to be stopped, however the drill ends. */
const stops: (() => void)[] = [];
const running = await startHoldfast();

try {
  process.exitCode = await drill();
} finally {
  for (const stop of stops) stop();
  await closeToll();
  await running.stop();
}

async function drill(): Promise<number> {
  const { url, web, worker, database } = running;
  const writers = ['north', 'south'].map((name) => ({ name, lives: keepWriting(name, url) }));
  stops.push(...writers.map(({ lives }) => lives.stop));
  const goOn = async () => {
    await Promise.all(writers.map(({ lives }) => lives.goesOn()));
  };
  const pages = askForPages();
  await goOn();
  const victims: Victim[] = [web, worker, database, ...writers.slice(0, 1).map(({ lives }) => lives)];
  const began = performance.now();
  const counts = await killInTurn(victims, kills, goOn);
  console.log(
    `killed ${kills} times in ${((performance.now() - began) / 1000).toFixed(0)} s: ${JSON.stringify(counts)}`,
  );
  for (const { lives } of writers) lives.stop();
  const { answered, refused } = pages.stop();
  console.log(`pages: ${answered} answered, ${refused} while the web process or the database was gone`);
  const tolls = [];
  for (const { name, lives } of writers) tolls.push({ name, toll: await tollOf(url, name, lives.all) });
  for (const { name, toll } of tolls) console.log(lineOf(name, toll));
  return tolls.every(({ toll }) => isClean(toll)) ? 0 : 1;
}

/** Asks for a page and for the state of health all the time. */
function askForPages(): { stop: () => { answered: number; refused: number } } {
  const count = { answered: 0, refused: 0 };
  let isOver = false;
  void (async () => {
    for (let path = '/api/health'; !isOver; path = path === '/' ? '/api/health' : '/') {
      try {
        const response = await fetch(running.address + path, { signal: AbortSignal.timeout(5000), redirect: 'manual' });
        if (response.status < 500) count.answered += 1;
        else count.refused += 1;
      } catch {
        count.refused += 1;
      }
      await wait(50);
    }
  })();
  return {
    stop: () => {
      isOver = true;
      return count;
    },
  };
}

function isClean({ missing, doubled, broken }: Toll): boolean {
  return missing.length === 0 && doubled.length === 0 && broken === null;
}

function lineOf(name: string, { answered, missing, doubled, unanswered, failed, links, broken }: Toll): string {
  return [
    `${name}: ${answered} writes answered as stored`,
    `${missing.length} missing ${missing.slice(0, 5).join(', ')}`.trim(),
    `${doubled.length} doubled ${doubled.slice(0, 5).join(', ')}`.trim(),
    `${unanswered} stored though nobody could be told`,
    `${failed} refused`,
    broken === null ? `record whole, ${links} links` : `record BROKEN at ${broken}`,
  ].join('; ');
}
