import { benchIngest } from './bench-ingest';
import { benchReview } from './bench-review';
import { benchSheets } from './bench-sheets';
import { benchYear } from './bench-year';
import { benchStrength } from './strength/bench-strength';

// Ratios are what is judged; milliseconds stand beside them and depend on the machine and on what else it does. Names of
// benches choose among them, and a number says for how many seconds readings are sent: `npm run bench -- strength 600`.
const words = process.argv.slice(2);
const seconds = Number(words.find((word) => /^\d+$/.test(word)) ?? 60);
const benches = {
  review: benchReview,
  ingest: benchIngest,
  sheets: benchSheets,
  year: benchYear,
  strength: () => benchStrength(seconds),
};
const chosen = Object.entries(benches).filter(([name]) => words.includes(name));
for (const [, bench] of chosen.length > 0 ? chosen : Object.entries(benches)) {
  const lines = await bench();
  process.stdout.write(`${lines.join('\n')}\n`);
}
