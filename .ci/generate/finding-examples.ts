// The examples of the findings as data, for `explain`: the very recipes by which the tests check them.

import { type FindingCode, findings } from '../../schema/findings.ts';

/** The text of schema/reference/finding-examples.json. `example` gives the marked recipe of a code, where there is one. */
export function findingExamplesText(example: (code: FindingCode) => string | undefined): string {
  const codes = Object.keys(findings) as FindingCode[];
  const examples = codes.flatMap(code => {
    const text = example(code);
    return text === undefined ? [] : [[code, textsOf(text)] as const];
  });
  return `${JSON.stringify(Object.fromEntries(examples), null, 2)}\n`;
}

function textsOf(example: string): { readonly marked: string; readonly fixed?: string } {
  const [marked = '', fixed] = example.split(/^# --- fixed *\n/mu);
  return fixed === undefined ? { marked: marked.trim() } : { marked: marked.trim(), fixed: fixed.trim() };
}
