// The example of a finding: a marked recipe in a file of its own, then what it says when it is put right. The same file is shown on
// the finding's page.

import { readdirSync, readFileSync } from 'node:fs';
import type { FindingCode } from '../../schema/findings.ts';
import { isMark, type MarkedRecipe, markedRecipe } from '../recipe.ts';

const ending = '.grow.yaml';

/** The codes that have an example. */
export function exampleCodes(): readonly string[] {
  return readdirSync(import.meta.dirname)
    .filter(file => file.endsWith(ending))
    .map(file => file.slice(0, -ending.length));
}

export interface Example {
  readonly marked: MarkedRecipe;
  /** The same without its marks. */
  readonly plain: MarkedRecipe;
  /** The recipe itself put right, with the files beside it as they were; undefined where nothing is shown. */
  readonly fixed: MarkedRecipe | undefined;
}

export function readExample(code: FindingCode): Example {
  const text = unfolded(readFileSync(`${import.meta.dirname}/${code}${ending}`, 'utf8'));
  const [marked = '', fixed] = text.split(/^# --- fixed *\n/mu);
  const name = `${code}${ending}`;
  const beside = /^#-- [\s\S]*/mu.exec(marked)?.[0] ?? '';
  return {
    marked: markedRecipe(marked, name),
    plain: markedRecipe(withoutMarks(marked), name),
    fixed: fixed === undefined ? undefined : markedRecipe(fixed + withoutMarks(beside), name),
  };
}

/** `#* 3000` repeats the line above it, and ␀ stands for a zero, which no text holds: what a page cannot show. */
function unfolded(text: string): string {
  return text
    .replaceAll('␀', '\0')
    .replace(/^(?<line>.*\n)#\* (?<times>\d+)\n/gmu, (_, line: string, times: string) => line.repeat(Number(times)));
}

function withoutMarks(text: string): string {
  return text
    .split('\n')
    .filter(line => !isMark(line))
    .join('\n');
}
