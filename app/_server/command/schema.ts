import 'server-only';
import { facilityJsonSchema } from '#shape/facility/json-schema';

process.stdout.write(`${JSON.stringify(facilityJsonSchema(), null, 2)}\n`);
