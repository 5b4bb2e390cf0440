// What a batch that asks `solve: to target` could be fed: amounts, and for each element how near they come and why not nearer.

import { unitOf } from '../../../schema/find-unit.ts';
import { fromUnit } from '../../../schema/quantity.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { type FormulatedElement, type Formulation, formulationOf } from '../../plan/formulate.ts';
import type { Scope } from '../../recipe/use.ts';
import { amountText, countIn, type Reader } from '../../words/amount.ts';
import { figureText, wantsText } from '../../words/figure.ts';
import { blocks, code, lines, table } from './blocks.ts';

/** Undefined where the batch asks for none. */
export function formulationBlock(batch: BatchPlan, scope: Scope, reader: Reader): string | undefined {
  const found = formulationOf(scope, batch);
  if (found === undefined) return undefined;
  if (found.kind === 'unknown') return `Amounts for the target: ${wantsText(found.wants)}`;
  return blocks(
    '**Best for the target**, written only when you take it:',
    amountsList(found, reader),
    elementsTable(found),
    lines(...found.elements.flatMap(whyLine), ecLine(found, reader)),
  );
}

function amountsList({ amounts }: Formulation, reader: Reader): string {
  return amounts
    .filter(({ perLitre }) => perLitre > 0)
    .map(({ feed, unit, perLitre, dose, atLabel }) => {
      const rate =
        unit === 'mL'
          ? amountText({ dimension: 'volume-per-volume', value: perLitre }, reader)
          : amountText(gramsPerLitre(perLitre), reader);
      return `- ${code(feed.name)}: ${figureText(dose, reader)}, ${rate}${atLabel ? ', all that its label allows' : ''}`;
    })
    .join('\n');
}

function gramsPerLitre(value: number) {
  return fromUnit(value, unitOf('g/L'));
}

const milligrams = unitOf('mg/L');

function elementsTable({ elements }: Formulation): string | undefined {
  const mg = (value: number): string => countIn({ dimension: 'mass-per-volume', value }, milligrams);
  const rows = elements.map(({ element, value, low, high, residual }) => [
    element,
    mg(value),
    `${mg(low)}..${mg(high)}`,
    residual === 0 ? 'in band' : `${mg(residual).replace('-', '')} ${residual < 0 ? 'short' : 'over'}`,
  ]);
  return table(['', 'mg/L', 'band', ''], rows, [1]);
}

function whyLine({ element, why }: FormulatedElement): readonly string[] {
  return why === undefined ? [] : [`${element}: ${why}.`];
}

function ecLine({ EC }: Formulation, reader: Reader): string {
  const text = (value: number): string => amountText({ dimension: 'conductivity', value }, reader);
  const band = EC.low === undefined || EC.high === undefined ? '' : `, band ${text(EC.low)} to ${text(EC.high)}`;
  return `EC ${text(EC.value)}${band}.`;
}
