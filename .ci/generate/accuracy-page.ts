// The page of accuracy: every reference case of solution chemistry, what the reference says, what we say, and by how much they
// differ; and the same cases once more as one recipe, through the whole way from text to figure. Misses stand first.

import { Workspace } from '../../server/workspace/workspace.ts';
import { type Comparison, compareAll, readCases } from '../../test/reference/chemistry-cases.ts';
import { compareRecipe } from '../../test/reference/recipe-comparisons.ts';
import { recipeOf } from '../../test/reference/recipes.ts';
import { generatedNote, page, table } from './markdown.ts';

export interface Accuracy {
  readonly cases: number;
  /** The solver asked directly. */
  readonly solver: readonly Comparison[];
  /** The plan of a recipe that holds the cases. */
  readonly recipe: readonly Comparison[];
}

export function measureAccuracy(): Accuracy {
  const cases = readCases();
  const workspace = new Workspace();
  const uri = 'file:///reference.grow.yaml';
  workspace.open(uri, recipeOf(cases));
  const plan = workspace.snapshot(uri)?.plan;
  if (plan === undefined) throw new Error('the recipe of the reference cases is not there');
  return { cases: cases.length, solver: compareAll(cases), recipe: compareRecipe(cases, plan) };
}

/** The text of schema/reference/accuracy.md. */
export function accuracyPage({ cases, solver, recipe }: Accuracy): string {
  const misses = missesOf([...solver, ...recipe]);
  return page(
    '# Accuracy of the solution chemistry',
    generatedNote('the cases in test/reference/chemistry-cases.jsonl'),
    `${cases} cases, asked in two ways:`,
    [
      `* the solver directly: ${counted(solver)}`,
      `* written as one recipe and read from its plan, as a grower would: ${counted(recipe)}`,
    ].join('\n'),
    method,
    '## Misses',
    misses.length === 0 ? 'None.' : tableOf(misses),
    '## Summary: the solver',
    summary(solver),
    '## Summary: the same as a recipe',
    'Blends and conductivities that are certified at another temperature than 25 °C cannot be written as a recipe.',
    summary(recipe),
    '## Every comparison of the solver',
    ...topicsOf(solver).flatMap(topic => [`### ${topic}`, tableOf(solver.filter(row => row.topic === topic))]),
  );
}

export function missesOf(rows: readonly Comparison[]): readonly Comparison[] {
  return rows.filter(row => !row.pass);
}

const method = `The reference is PHREEQC 3.8.9 (U.S. Geological Survey) with its database Amm.dat as released with 3.7.3 and added
constants for citrate, phthalate, brushite and struvite; buffers and potassium chloride are judged by their
certificates instead. Tolerances: pH 0.02 (buffers 0.03; titration points 0.03 between pH 5.4 and 6.8, 0.15 outside,
where the reference’s own databases part by a tenth); doses 1.5 % or 0.005 mmol/L; saturation indices 0.05
(hydroxyapatite 0.15); EC at 25 °C inside the band between the reference’s two conductivity models; certified
conductivity 1 %; inorganic carbon, alkalinity and ionic strength 2 %. Alkalinity is not compared where citrate is
present: the reference counts it from Cit³⁻, we from the form that prevails at pH 4.5, as a titration does. Stock
solutions beyond an ionic strength of 0.5 are compared by whether they form a solid, and by the sign of an index.
A difference of less than a hundred-thousandth is shown as 0.`;

function counted(rows: readonly Comparison[]): string {
  return `${rows.length} comparisons, ${missesOf(rows).length} outside their tolerance`;
}

function topicsOf(rows: readonly Comparison[]): readonly string[] {
  return [...new Set(rows.map(row => row.topic))];
}

function summary(rows: readonly Comparison[]): string {
  return table(
    ['topic', 'quantity', 'comparisons', 'misses', 'mean difference', 'largest difference', 'of its tolerance'],
    topicsOf(rows).flatMap(topic => summaryRows(rows.filter(row => row.topic === topic))),
  );
}

function summaryRows(rows: readonly Comparison[]): readonly (readonly string[])[] {
  return [...new Set(rows.map(kindOf))].map(kind => {
    const those = rows.filter(row => kindOf(row) === kind);
    const mean = those.reduce((sum, row) => sum + row.difference, 0) / those.length;
    const worst = those.reduce((a, b) => (Math.abs(b.difference) > Math.abs(a.difference) ? b : a));
    const share = Math.max(...those.map(row => (row.tolerance === 0 ? 0 : Math.abs(row.difference) / row.tolerance)));
    return [
      those[0]?.topic ?? '',
      kind,
      String(those.length),
      String(missesOf(those).length),
      say(mean),
      say(worst.difference),
      `${Math.round(share * 100)} %`,
    ];
  });
}

/** The quantity without the place on a curve, so that a curve's points are counted together. */
function kindOf(row: Comparison): string {
  return row.what.replace(/^pH at [0-9.]+ .*/, 'pH on the titration curve').replace(/^(?:after|start|in air): /, '');
}

function tableOf(rows: readonly Comparison[]): string {
  return table(
    ['case', 'quantity', 'reference', 'ours', 'difference', 'tolerance', ''],
    rows.map(({ id, what, reference, ours, difference, tolerance, pass }) => [
      id,
      what,
      ...[reference, ours, difference, tolerance].map(say),
      pass ? '' : 'miss',
    ]),
  );
}

/** The last digits of tiny numbers differ between engines, and say nothing. */
function say(value: number): string {
  if (Math.abs(value) < 1e-5) return '0';
  return Math.abs(value) < 1e-3 ? value.toExponential(1) : String(Number(value.toPrecision(4)));
}
