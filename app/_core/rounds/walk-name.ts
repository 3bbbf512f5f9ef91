/** Keys hold no slash, so that a kept sheet and a slot of the timetable are told apart. */
const OF_SHEET = 'sheet/';

/** What a telephone calls the walks of a kept sheet, beside the keys of the timetable. @param key of the sheet */
export function slotOfSheet(key: string): string {
  return `${OF_SHEET}${key}`;
}

/** Key of the kept sheet that a walk is of; null when it is one of the timetable. */
export function sheetOfSlot(slot: string): string | null {
  return slot.startsWith(OF_SHEET) ? slot.slice(OF_SHEET.length) : null;
}
