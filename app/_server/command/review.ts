import 'server-only';
import { readFileSync } from 'node:fs';
import type { SystemReview } from '#core/review/result';
import { reviewFacility } from '#core/review/review-facility';
import { studySystem } from '#core/review/study-system';
import { readFacility } from '#shape/facility/read-facility';
import { isoDate } from '#shape/facility/words';
import { now } from '#server/clock';
import { dayIn } from '#server/local-day';
import { printReview } from './print-review';
import { printStudy } from './print-study';
import { fail, printErrors } from './said';
import { wordsGiven } from './words-given';

const USAGE = 'npm run -s review -- FILE [--system ID] [--on YYYY-MM-DD] [--study] [--json]';

const { values, positionals } = wordsGiven(
  {
    allowPositionals: true,
    options: {
      system: { type: 'string' },
      on: { type: 'string' },
      study: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
    },
  },
  USAGE,
);
const [file] = positionals;
if (file === undefined || positionals.length > 1) fail(`Give one facility file: ${USAGE}`);

const facility = load(file);
if (values.system !== undefined && !facility.systems.some((s) => s.key === values.system)) {
  fail(`--system: there is no system "${values.system}"; there are ${facility.systems.map((s) => s.key).join(', ')}`);
}
if (values.on !== undefined && !isoDate('Day of the review.').safeParse(values.on).success)
  fail(`--on: "${values.on}" is not a date like 2026-11-25`);

const review = reviewFacility(
  facility,
  values.on ?? dayIn(facility.site.zone, now()),
  values.system === undefined ? undefined : [values.system],
);
const studies = values.study ? review.systems.map(studied) : [];
if (values.json) {
  process.stdout.write(
    `${JSON.stringify(values.study ? { ...review, studies: studies.map((one) => one.study) } : review, null, 2)}\n`,
  );
} else {
  process.stdout.write(
    [printReview(review), ...studies.map(({ system, study }) => printStudy(system, study))].join('\n'),
  );
}
const serious = [...review.findings, ...review.systems.flatMap((s) => s.findings)].some((f) => f.grade !== 'low');
process.exitCode = serious ? 1 : 0;

function studied(one: SystemReview) {
  const system = facility.systems.find(({ key }) => key === one.system);
  if (!system) throw new Error(`a review of no system: ${one.system}`);
  return { system, study: studySystem(facility, system, review.on, one) };
}

function load(path: string) {
  let text = '';
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    fail(`${path} cannot be read`);
  }
  const read = readFacility(text);
  if (read.ok) return read.value;
  return printErrors(path, read.reason);
}
