'use server';

import { importFacility, importFacilityShape } from '#server/facility/import-facility';
import { previewImport, previewImportShape } from '#server/facility/preview-import';
import { act } from '#server/gate/act';

export const previewFile = act(previewImportShape, previewImport);

export const importFile = act(importFacilityShape, importFacility, () => ['/']);
