import { benchReview } from './bench-review';

// Ratios are what is judged; milliseconds stand beside them and depend on the machine and on what else it does.
const lines = benchReview();
process.stdout.write(`${lines.join('\n')}\n`);
