import { FACILITY_FORMAT } from '#core/facility/facility';
import { z } from 'zod';
import { facilityShape } from './facility';

/**
 * The JSON Schema (draft 2020-12) of the facility file, generated from the shapes that read it. It describes what may
 * stand in a file; whether references fit together is for `checkReferences`.
 */
export function facilityJsonSchema(): Record<string, unknown> {
  const { $schema, ...schema } = z.toJSONSchema(facilityShape, { io: 'input', target: 'draft-2020-12' });
  return { $schema, $id: FACILITY_FORMAT, title: 'Holdfast facility file', ...schema };
}
