// The page of the sources: every publication cited, what rests on it, and how much rests on weak ground.

import { dimensions } from '../../schema/dimensions.ts';
import { findings } from '../../schema/findings.ts';
import { type SourceKey, sources } from '../../schema/sources.ts';
import { unitRows } from '../../schema/units.ts';
import { reagents } from '../../server/chemistry/tables/acids.ts';
import { elements } from '../../server/chemistry/tables/elements.ts';
import { gases } from '../../server/chemistry/tables/gases.ts';
import { minerals } from '../../server/chemistry/tables/minerals.ts';
import { mobility } from '../../server/chemistry/tables/mobility.ts';
import { reactions } from '../../server/chemistry/tables/reactions.ts';
import { crops } from '../../server/plan/crops.ts';
import type { Known } from '../../server/plan/figure.ts';
import { formulas } from '../../server/plan/formulas.ts';
import { usualFill } from '../../server/plan/loads.ts';
import { usualSpare } from '../../server/plan/serving.ts';
import { uptakeEC } from '../../server/plan/uptake.ts';
import { usualTemperature } from '../../server/plan/water.ts';
import { code, generatedNote, page, table } from './markdown.ts';

/** Sources that are no publication; what rests on them is counted at the top of the page. */
const weak: readonly SourceKey[] = ['common-practice', 'from-memory'];

/** The text of schema/reference/sources.md. */
export function sourcesPage(): string {
  const keys = Object.keys(sources) as SourceKey[];
  const resting = new Map(keys.map(key => [key, citations.filter(citation => citation.source === key)]));
  return page(
    '# Sources',
    generatedNote('schema/sources.ts and the rows that cite it'),
    `${citations.length} facts rest on ${keys.length} sources. The weak ones are named as such:`,
    table(
      ['weak source', 'what rests on it'],
      weak.map(key => [sources[key].title, String(resting.get(key)?.length ?? 0)]),
    ),
    ...keys.flatMap(key => source(key, resting.get(key) ?? [])),
  );
}

interface Citation {
  readonly source: SourceKey;
  readonly kind: string;
  readonly what: string;
}

const rows = (kind: string, table: Readonly<Record<string, { readonly source: SourceKey } | undefined>>): Citation[] =>
  Object.entries(table).flatMap(([what, row]) => (row === undefined ? [] : [{ source: row.source, kind, what }]));

const citations: readonly Citation[] = [
  ...rows('units', Object.fromEntries(unitRows)),
  ...rows('formulas', Object.fromEntries(formulas)),
  ...Object.entries(findings).flatMap(([what, row]) =>
    row.sources.map((source: SourceKey) => ({ source, kind: 'findings', what })),
  ),
  ...rows('atomic weights', elements),
  ...reactions.map(({ source, makes }) => ({ source, kind: 'reactions', what: makes })),
  ...rows('solubility', minerals),
  ...rows('gases', gases),
  ...rows('conductivity', mobility),
  ...rows('hazard statements', reagents),
  ...rows('what crops drink', crops),
  ...rows('what is taken up', { uptakeEC }),
  ...[usualFill, usualSpare, usualTemperature].flatMap(assumption),
];

/** What is taken where a recipe is silent. */
function assumption({ quantity, by }: Known): readonly Citation[] {
  if (by.kind !== 'assumed') return [];
  const { base } = dimensions[quantity.dimension];
  const what = `${base === '1' ? quantity.value : `${quantity.value} ${base}`}: ${by.says}`;
  return [{ source: by.source, kind: 'taken where nothing is written', what }];
}

function source(key: SourceKey, resting: readonly Citation[]): readonly string[] {
  const row: { title: string; year?: number; licence?: string; gives: string } = sources[key];
  const kinds = [...new Set(resting.map(citation => citation.kind))];
  const year = row.year === undefined ? '' : ` (${row.year})`;
  const licence = row.licence === undefined ? '' : ` Licence: ${row.licence}.`;
  return [
    `## ${key}`,
    `${row.title}${year}. Gives ${row.gives}.${licence}`,
    ...kinds.map(kind => {
      const of = resting.filter(citation => citation.kind === kind).map(citation => code(citation.what));
      return `${kind} (${of.length}): ${of.join(', ')}`;
    }),
  ];
}
