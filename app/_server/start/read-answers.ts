import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { DraftGroup, Field, FieldFault } from '#core/forms/field';
import { ok, type Result, refused } from '#core/result';
import { checkAnswers } from '#core/start/check-answers';
import { startSystem } from '#core/start/start-system';
import type { Custom } from '#core/units/shown';
import { wordIssues } from '#shape/facility/word-issue';
import { readDraft } from '#shape/form/read-draft';
import { startAnswersShape } from '#shape/start/start-answers';
import { checkReferences } from '#core/facility/check-references';
import { formMessage } from '../describe/form-message';
import { formOf } from '../describe/form-of';
import type { Refusal } from '../gate/refusal';

/** The questions a system of a site is begun with, in the person's units. */
export function startFields(facility: Facility, custom: Custom): Field[] {
  return formOf(startAnswersShape, { facility, system: null, custom });
}

/**
 * The system that typed answers describe, and the site with it.
 *
 * @returns   or every fault, by the fields of the form
 */
export function readAnswers(
  facility: Facility,
  draft: DraftGroup,
  custom: Custom,
): Result<{ system: System; facility: Facility }, Refusal> {
  const typed = readDraft(startFields(facility, custom), draft, custom);
  const shaped = startAnswersShape.safeParse(typed);
  if (!shaped.success) {
    const faults = wordIssues(shaped.error.issues, typed);
    return refused({ why: 'invalid', faults: faults.map(atField) });
  }
  const faults = checkAnswers(shaped.data);
  if (faults.length > 0) return refused({ why: 'invalid', faults });
  const system = onOwnWord(
    startSystem(
      shaped.data,
      facility.systems.map(({ key }) => key),
    ),
  );
  const whole = { ...facility, systems: [...facility.systems, system] };
  // A room or a circuit may have gone since the form was opened.
  const misfits = checkReferences(whole).filter(({ path }) => path[1] === facility.systems.length);
  if (misfits.length > 0)
    return refused({ why: 'invalid', faults: misfits.map(({ message }) => ({ path: '', message })) });
  return ok({ system, facility: whole });
}

/** The first plans are in force at once, as somebody's answers have them: until somebody else has read them, they say so. */
function onOwnWord(system: System): System {
  const ownWord = { why: 'its first plan, begun with the first answers about the system' };
  return { ...system, equipment: system.equipment.map((one) => ({ ...one, plan: { ...one.plan, ownWord } })) };
}

/** A fault by the field of the form; its label stands beside it, so that the name in the file is not said. */
function atField({ path, message }: { path: readonly (string | number)[]; message: string }): FieldFault {
  return {
    path: path.join('.'),
    message: formMessage(
      message,
      path.findLast((step) => typeof step === 'string'),
    ),
  };
}
