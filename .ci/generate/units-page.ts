// The reference page of the units: every row of schema/units.ts by what it measures.

import { type Dimension, dimensions } from '../../schema/dimensions.ts';
import { sources } from '../../schema/sources.ts';
import { unitRows } from '../../schema/units.ts';
import { anchor, code, generatedNote, page, table } from './markdown.ts';

/** The text of schema/reference/units.md. */
export function unitsPage(): string {
  const kinds = Object.keys(dimensions) as Dimension[];
  return page(
    '# Units',
    generatedNote('schema/units.ts'),
    intro,
    ...kinds.flatMap(dimension => [`## ${dimension}`, lead(dimension), tableOf(dimension)]),
  );
}

const intro = `A unit is written behind its number, with or without a space. Letter case is forgiven where only one unit can be meant.
A unit of volume, mass or amount may stand over a unit of volume or time: \`mL/gal\`, \`g/L\`, \`mL/d\`. \`gal\` is the US gallon and
\`gal_imp\` the imperial one; \`tsp\` and \`tbsp\` are the spoons of 5 and 15 mL that labels use.`;

function lead(dimension: Dimension): string {
  const { title, base, example } = dimensions[dimension];
  const kind = title.slice(0, 1).toUpperCase() + title.slice(1);
  return base === '1' ? `${kind}, as in ${code(example)}.` : `${kind}, as in ${code(example)}; counted in ${base}.`;
}

function tableOf(dimension: Dimension): string {
  const rows = unitRows.filter(([, row]) => row.dimension === dimension);
  if (rows.length === 0) return '';
  return table(
    ['unit', 'name', 'is', 'also read', 'source'],
    rows.map(([symbol, row]) => [
      code(symbol),
      row.note === undefined ? row.title : `${row.title}: ${row.note}`,
      sizeOf(row, dimensions[dimension].base),
      row.aliases.map(code).join(', '),
      `[${sources[row.source].title}](sources.md#${anchor(row.source)})`,
    ]),
  );
}

function sizeOf(row: (typeof unitRows)[number][1], base: string): string {
  const size = Number((row.times / row.over).toPrecision(12));
  if (row.zero !== undefined) return `${size} × (reading − ${row.zero}) ${base}`;
  return base === '1' ? String(size) : `${size} ${base}`;
}
