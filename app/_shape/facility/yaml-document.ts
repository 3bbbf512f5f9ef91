import { Composer, type CST, type Document, Lexer, type LineCounter, Parser, YAMLParseError } from 'yaml';

/** Levels of nesting that are read; a facility needs fifteen. */
export const DEEPEST = 40;
/** Fields that are read in one place; a noun has twenty-five at most. Comparing them with each other takes their square. */
const MOST_FIELDS = 200;
/** The document and a scalar stand on the parser's stack beside the levels of nesting. */
const BESIDE = 2;

/**
 * The one YAML document in a text: version 1.2, core schema, no tags but those of plain data, no field twice.
 *
 * Depth and width are bounded while the text is taken apart, before anything walks it by recursion: a text of nothing
 * but brackets would else exhaust the stack, at which the engine may end the whole process.
 *
 * @param text  the whole file
 * @param lines learns where lines begin
 * @returns the document, with its faults; or in words which bound the text goes beyond
 */
export function yamlDocument(text: string, lines: LineCounter): Document | string {
  const tokens = tokensOf(text, lines);
  if (typeof tokens === 'string') return tokens;
  const composer = new Composer({ version: '1.2', schema: 'core', resolveKnownTags: false, uniqueKeys: true });
  const [first, second] = composer.compose(tokens, true, text.length);
  if (first && second) first.errors.push(new YAMLParseError(placesOf(second), 'MULTIPLE_DOCS', 'a second document'));
  return first ?? 'is empty';
}

function placesOf({ range }: Document): [number, number] {
  return [range?.[0] ?? 0, range?.[1] ?? 0];
}

function tokensOf(text: string, lines: LineCounter): CST.Token[] | string {
  const parser = new Parser(lines.addNewLine);
  const tokens: CST.Token[] = [];
  lines.addNewLine(0);
  for (const lexeme of new Lexer().lex(text)) {
    tokens.push(...parser.next(lexeme));
    if (parser.stack.length > DEEPEST + BESIDE) return 'is nested too deeply';
    if (isTooWide(parser.stack.at(-1))) return `has more than ${MOST_FIELDS} fields in one place`;
  }
  tokens.push(...parser.end());
  return tokens;
}

function isTooWide(token: CST.Token | undefined): boolean {
  const isMap = token?.type === 'block-map' || (token?.type === 'flow-collection' && token.start.source === '{');
  return isMap && token.items.length > MOST_FIELDS;
}
