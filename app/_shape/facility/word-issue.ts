import { nearestWord } from '#core/facility/nearest-word';
import { fieldOf, type Path } from '#core/facility/path';
import type { z } from 'zod';

/** One thing that is wrong with a value, in words that begin with the field. `unknown`: the field itself is too many. */
export interface Fault {
  path: Path;
  message: string;
  unknown: boolean;
}

type Issue = z.core.$ZodIssue;

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  array: 'a list',
  tuple: 'a list',
  object: 'an object with fields',
};

/**
 * What zod found, in plain words naming the field, what it must be, and what stands there.
 *
 * @param issues what zod found
 * @param data   the value it looked at
 * @returns at least one fault for each issue
 */
export function wordIssues(issues: readonly Issue[], data: unknown): Fault[] {
  return issues.flatMap((issue) => wordIssue(issue, data, []));
}

function wordIssue(issue: Issue, data: unknown, within: Path): Fault[] {
  const path: Path = [...within, ...issue.path.map((step) => (typeof step === 'number' ? step : String(step)))];
  if (issue.code === 'unrecognized_keys') {
    const words = issue.message.split('\n');
    return issue.keys.map((key, at) => ({ path: [...path, key], message: `${key} ${words[at] ?? ''}`, unknown: true }));
  }
  if (issue.code === 'invalid_union') {
    const meant = issue.errors.filter((branch) => branch.length > 0 && !branch.some(isOtherForm));
    const [only] = meant;
    if (meant.length === 1 && only) return only.flatMap((inner) => wordIssue(inner, data, path));
  }
  const found = valueAt(data, path);
  const words = found === undefined ? 'is missing' : wanted(issue, found);
  return [{ path, message: `${fieldOf(path)} ${words}`, unknown: false }];
}

/** Whether the value is not of this form at all, so that the branch was not meant. */
function isOtherForm(issue: Issue): boolean {
  return (
    issue.path.length === 0 && ['invalid_type', 'invalid_value', 'invalid_format', 'invalid_union'].includes(issue.code)
  );
}

function wanted(issue: Issue, found: unknown): string {
  const text = `found ${show(found)}`;
  switch (issue.code) {
    case 'invalid_type': {
      const hint = issue.expected === 'string' && typeof found === 'number' ? '; put it in quotes' : '';
      return `must be ${KINDS[issue.expected] ?? issue.expected}, ${text}${hint}`;
    }
    case 'invalid_value':
      return oneOf(issue.values.map(String), found);
    case 'invalid_union':
      return issue.discriminator ? unionKind(issue, found) : `${issue.message}, ${text}`;
    case 'too_small':
      return `must ${size(issue, issue.inclusive ? 'at least' : 'more than', Number(issue.minimum))}, ${text}`;
    case 'too_big':
      return `must ${size(issue, issue.inclusive ? 'at most' : 'less than', Number(issue.maximum))}, ${text}`;
    case 'custom':
    case 'invalid_format':
    case 'invalid_key':
    case 'invalid_element':
    case 'not_multiple_of':
    case 'unrecognized_keys':
      return issue.message.includes('{found}') ? issue.message.replace('{found}', text) : `${issue.message}, ${text}`;
  }
}

function unionKind(issue: z.core.$ZodIssueInvalidUnion, found: unknown): string {
  const values = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];
  return found === undefined ? 'is missing' : oneOf(values, found);
}

function oneOf(values: readonly string[], found: unknown): string {
  const near = typeof found === 'string' ? nearestWord(found, values) : null;
  const wantedWords = values.length === 1 ? `"${values[0]}"` : `one of ${values.join(', ')}`;
  return `must be ${wantedWords}, found ${show(found)}${near && values.length > 1 ? `. Did you mean ${near}?` : ''}`;
}

function size({ origin, exact }: { origin: string; exact?: boolean }, how: string, limit: number): string {
  const bound = `${exact ? 'exactly' : how} ${limit}`;
  if (origin === 'string') return `have ${bound} letters`;
  if (origin === 'array') return `have ${bound} ${limit === 1 ? 'member' : 'members'}`;
  return `be ${bound}`;
}

function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[step] : undefined,
    data,
  );
}

function show(found: unknown): string {
  if (typeof found === 'string') return found.length > 60 ? `"${found.slice(0, 57)}…"` : `"${found}"`;
  if (Array.isArray(found)) return `a list of ${found.length}`;
  if (found === null) return 'nothing';
  return typeof found === 'object' ? 'an object with fields' : String(found);
}
