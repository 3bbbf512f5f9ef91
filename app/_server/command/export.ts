import 'server-only';
import { parseArgs } from 'node:util';
import { exportFacility, exportFacilityShape } from '#server/facility/export-facility';
import { refusalWords } from '#server/gate/refusal-words';
import { pass } from '#server/gate/use-case';
import { LOCAL_PERSON } from '#server/gate/who';
import { fail } from './said';
import { withDatabase } from './with-database';

const USAGE = 'npm run -s export -- SITE [--format json|yaml]';

const { values, positionals } = parseArgs({ allowPositionals: true, options: { format: { type: 'string' } } });
const [site] = positionals;
if (site === undefined || positionals.length > 1) fail(`Give the key of one site: ${USAGE}`);
const { format } = values;
if (format !== undefined && format !== 'json' && format !== 'yaml')
  fail(`--format: "${format}" is neither json nor yaml`);

void withDatabase(async () => {
  const exported = await pass(exportFacilityShape, exportFacility, LOCAL_PERSON, { site, format });
  if (exported.ok) process.stdout.write(exported.value.text);
  else fail(exported.reason.why === 'not-found' ? `There is no site "${site}"` : refusalWords(exported.reason));
});
