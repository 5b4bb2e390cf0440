// The page of the formulas: the rows that run, in words.

import { dimensions } from '../../schema/dimensions.ts';
import { sources } from '../../schema/sources.ts';
import type { FormulaRow } from '../../server/plan/figure.ts';
import { formulas } from '../../server/plan/formulas.ts';
import { anchor, code, generatedNote, page } from './markdown.ts';

/** The text of schema/reference/formulas.md. */
export function formulasPage(): string {
  return page(
    '# Formulas',
    generatedNote('server/plan/formulas.ts'),
    `Every number that Tidemark shows comes from these ${formulas.size} formulas. What stands here is the row that runs: a hover and \`explain\` show it with the recipe's numbers in place.`,
    ...[...formulas.values()].flatMap(formula),
  );
}

function formula(row: FormulaRow): readonly string[] {
  const takes = Object.entries(row.takes).map(([name, taken]) => {
    const [dimension, many] = typeof taken === 'string' ? [taken, ''] : [taken[0], ', any number of them'];
    return `${code(name)} ${dimensions[dimension].title}${many}`;
  });
  return [
    `## ${row.id}`,
    `Gives ${row.says}, ${dimensions[row.gives].title}.`,
    `    ${row.statement}`,
    `From ${takes.join('; ')}. Source: [${sources[row.source].title}](sources.md#${anchor(row.source)}).`,
  ];
}
