import type { Facility } from '#core/facility/facility';
import { Document, isScalar, visit } from 'yaml';
import { z } from 'zod';
import { facilityShape } from './facility';
import type { FileFormat } from './parse-text';
import { printJson } from './print-json';

/**
 * Writes a facility in its one canonical form: fields in the order of the schema, figures as short as they can be,
 * empty lists left out. Reading it gives the same facility again.
 *
 * @param facility a valid facility
 * @param format   JSON unless said otherwise
 * @returns the whole file, ending in a line break
 * @throws ZodError when the facility is not valid, which is a break of the caller
 */
export function writeFacility(facility: Facility, { format = 'json' }: { format?: FileFormat } = {}): string {
  const data = z.encode(facilityShape, facility);
  return format === 'json' ? `${printJson(data)}\n` : printYaml(data);
}

/** YAML 1.2, with quotes where a reader of YAML 1.1 would take text for something else (07:30, no). */
function printYaml(data: unknown): string {
  const document = new Document(data, {
    version: '1.2',
    schema: 'core',
    compat: 'yaml-1.1',
    aliasDuplicateObjects: false,
  });
  visit(document, {
    Seq: (_, list) => {
      list.flow = list.items.every((member) => isScalar(member));
    },
  });
  return document.toString({ lineWidth: 0, flowCollectionPadding: false });
}
