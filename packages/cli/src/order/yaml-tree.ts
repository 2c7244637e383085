import type { Document, Node, YAMLParseError } from 'yaml';
import { isAlias, isMap, isScalar, isSeq, LineCounter, Parser, parseDocument } from 'yaml';
import type { Complaint, Fault, FieldPath } from '../faults/fault.js';

/** A document as its writer wrote it: every scalar is still text. */
export type RawValue =
  | string
  | null
  | readonly RawValue[]
  | { readonly [field: string]: RawValue | undefined };

export interface YamlTree {
  readonly value: RawValue;
  /** The line, from 1, of the field at a path, or of the nearest part of it that exists. */
  lineOf(path: FieldPath): number;
}

export type YamlOutcome =
  | { readonly ok: true; readonly tree: YamlTree }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** An order of a few hundred items takes some 50 kB. */
const LONGEST_TEXT = 1_000_000;
/** An order nests some 6 levels; the parser recurses, so much more would exhaust the stack. */
const DEEPEST = 64;
/** Repeats of anchored parts; more is a bomb, not an order. */
const MOST_ALIASES = 100;

/**
 * Reads YAML 1.2 with the failsafe schema, in which `7.40`, `yes` and `007`
 * stay the texts they are. What they mean depends on the field, so it is for
 * the order's schema to say, and exactly what was written can be quoted.
 */
export function parseYaml(text: string): YamlOutcome {
  const lines = new LineCounter();
  const fail = (complaint: Complaint, line: number): YamlOutcome => ({
    ok: false,
    faults: [{ complaint, path: [], line }],
  });
  if (text.length > LONGEST_TEXT) {
    return fail({ code: 'not YAML', reason: 'longer than a million characters' }, 1);
  }
  if (nestingDepth(text) > DEEPEST) {
    return fail({ code: 'not YAML', reason: `nested deeper than ${DEEPEST} levels` }, 1);
  }
  const document = parseDocument(text, {
    version: '1.2',
    schema: 'failsafe',
    lineCounter: lines,
    prettyErrors: false,
    stringKeys: true,
  });
  if (document.errors.length > 0) {
    return { ok: false, faults: tellingErrors(document.errors, text, lines) };
  }
  if (document.contents === null) return fail({ code: 'empty file' }, 1);
  try {
    const value: RawValue = document.toJS({ maxAliasCount: MOST_ALIASES });
    return { ok: true, tree: { value, lineOf: (path) => lineOfPath(document, lines, path) } };
  } catch (error) {
    // Thrown by the library for aliases without an anchor and for alias bombs.
    const reason = error instanceof Error ? error.message : String(error);
    return fail({ code: 'not YAML', reason: reason.split('\n')[0] ?? reason }, 1);
  }
}

/** Causes that the library words for programmers. */
const YAML_REASONS: Readonly<Partial<Record<string, string>>> = {
  DUPLICATE_KEY: 'this field is given twice in the same section; keep one',
  MULTIPLE_DOCS: 'a second document starts here; an order is one document, without --- in it',
  NON_STRING_KEY: 'a field must be named by plain text',
  TAB_AS_INDENT: 'a tab indents this line; indent with blanks',
  BLOCK_AS_IMPLICIT_KEY:
    'indent this line like its neighbours, and put a text with ": " in it into quotes',
};

/**
 * The errors that tell something: those up to the first that breaks the
 * structure, since those after it mostly follow from it.
 */
function tellingErrors(
  errors: readonly YAMLParseError[],
  text: string,
  lines: LineCounter,
): readonly Fault[] {
  const breaking = errors.findIndex(({ code }) => code !== 'DUPLICATE_KEY');
  const telling = breaking < 0 ? errors : errors.slice(0, breaking + 1);
  return telling.map(({ code, message, pos }) => {
    const line = lineAt(lines, pos[0]);
    const tab = /^[ ]*\t/.test(text.split('\n')[line - 1] ?? '');
    const known = tab ? YAML_REASONS.TAB_AS_INDENT : YAML_REASONS[code];
    const reason = known ?? message.split('\n')[0] ?? code;
    return { complaint: { code: 'not YAML', reason }, path: [], line };
  });
}

/** How deep lists and sections nest, counted without recursion. */
function nestingDepth(text: string): number {
  interface Token {
    readonly value?: unknown;
    readonly items?: readonly { readonly key?: unknown; readonly value?: unknown }[];
  }
  const isToken = (part: unknown): part is Token => typeof part === 'object' && part !== null;
  let deepest = 0;
  const waiting: { readonly token: Token; readonly depth: number }[] = [];
  const visit = (part: unknown, depth: number) => {
    if (isToken(part)) waiting.push({ token: part, depth });
  };
  for (const token of new Parser().parse(text)) visit(token, 0);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    deepest = Math.max(deepest, next.depth);
    visit(next.token.value, next.depth + 1);
    for (const item of next.token.items ?? []) {
      visit(item.key, next.depth + 1);
      visit(item.value, next.depth + 1);
    }
  }
  return deepest;
}

function lineOfPath(document: Document, lines: LineCounter, path: FieldPath): number {
  let node: unknown = document.contents;
  let offset = offsetOf(node) ?? 0;
  for (const step of path) {
    if (isAlias(node)) node = node.resolve(document);
    if (isMap(node)) {
      const pair = node.items.find(
        ({ key }) => isScalar(key) && String(key.value) === String(step),
      );
      if (pair === undefined) break;
      offset = offsetOf(pair.key) ?? offset;
      node = pair.value;
    } else if (isSeq(node) && typeof step === 'number') {
      const item = node.items[step];
      if (item === undefined) break;
      offset = offsetOf(item) ?? offset;
      node = item;
    } else {
      break;
    }
  }
  return lineAt(lines, offset);
}

function offsetOf(node: unknown): number | undefined {
  return (node as Node | null | undefined)?.range?.[0];
}

function lineAt(lines: LineCounter, offset: number): number {
  return Math.max(1, lines.linePos(offset).line);
}
