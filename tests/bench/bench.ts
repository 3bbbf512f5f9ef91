import { benchIngest } from './bench-ingest';
import { benchReview } from './bench-review';

// Ratios are what is judged; milliseconds stand beside them and depend on the machine and on what else it does.
for (const bench of [benchReview, benchIngest]) {
  const lines = await bench();
  process.stdout.write(`${lines.join('\n')}\n`);
}
