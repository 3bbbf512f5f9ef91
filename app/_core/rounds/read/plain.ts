import { beyondUsual } from '../abnormal';
import type { ChoiceCheck, DosesCheck, FigureCheck, Range } from '../check';
import { type Read, readAs, type TypedLine, typedNumber, wrong } from './typed';

const MOST = 1e9;
const MOST_PHOTOS = 12;
const MOST_DOSES = 1e4;

/** A number in the unit that stands beside it. Outside what is usual is asked about, not refused. */
export function readFigure({ usual, unit }: FigureCheck, typed: TypedLine): Read {
  const number = typedNumber(typed.number);
  if (!number.ok) return number;
  const { value } = number;
  if (Math.abs(value) > MOST) return wrong('number', 'is beyond belief');
  const beyond = beyondUsual(usual, value);
  const question = beyond
    ? `${value} ${unit} is ${beyond} what is usual${rangeSaid(usual, unit)}. What was done?`
    : null;
  return readAs({ kind: 'figure', value }, [question]);
}

/** One of the words of the line. One that is not usual is kept with what was seen, as "not as usual" is. */
export function readChoice({ options }: ChoiceCheck, typed: TypedLine & { note?: string | undefined }): Read {
  const chosen = options.find(({ key }) => key === typed.option);
  if (!chosen) return wrong('option', 'must be one of the words of this line');
  if (!chosen.usual && typed.note === undefined) return wrong('note', 'say what was seen and done');
  return readAs({ kind: 'choice', option: chosen.key });
}

/** A sentence. */
export function readText(typed: TypedLine): Read {
  return typed.text === undefined ? wrong('text', 'say what was seen') : readAs({ kind: 'text', text: typed.text });
}

/** Photos, by the ids they are kept or sent under. */
export function readPhotos(typed: TypedLine): Read {
  const photos = [...new Set((typed.photos ?? '').split(',').map((id) => id.trim()))].filter((id) => id !== '');
  if (photos.length === 0) return wrong('photos', 'take a photo, or say why there is none');
  if (photos.length > MOST_PHOTOS) return wrong('photos', `are more than ${MOST_PHOTOS}`);
  if (!photos.every((id) => /^[0-9a-f-]{36}$/.test(id))) return wrong('photos', 'are named by ids');
  return readAs({ kind: 'photo', photos });
}

/** Doses given since somebody last looked. */
export function readDoses(_check: DosesCheck, typed: TypedLine): Read {
  const number = typedNumber(typed.number);
  if (!number.ok) return number;
  if (number.value < 0 || number.value > MOST_DOSES) return wrong('number', 'must be 0 or more');
  return readAs({ kind: 'doses', doses: number.value });
}

function rangeSaid(usual: Range | undefined, unit: string): string {
  if (usual?.from !== undefined && usual.to !== undefined) return `, ${usual.from} to ${usual.to} ${unit}`;
  const end = usual?.from ?? usual?.to;
  return end === undefined ? '' : `, ${end} ${unit}`;
}
