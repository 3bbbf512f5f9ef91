import type { Part } from '../block';
import type { DocumentData } from '../document-data';
import { casesPart } from './cases';
import { combinationsPart } from './combinations';
import { findingsPart, sitePart } from './findings';
import { fixFirstPart } from './fix-first';
import { inputsPart } from './inputs';
import { madePart } from './lead';
import { cautionsPart, notModelledPart, readingPart } from './limits';

/** The sections of the document, in order. */
export function documentParts(data: DocumentData): Part[] {
  const site = sitePart(data);
  return [
    fixFirstPart(data),
    findingsPart(data),
    ...(site ? [site] : []),
    combinationsPart(data),
    casesPart(data),
    inputsPart(data),
    notModelledPart(data),
    cautionsPart(data),
    readingPart(),
    madePart(data),
  ];
}
