// The feeds of a batch on its sheet: what to measure with which tool, in which order, and what must not meet undiluted.

import type { BatchPlan, DosePlan } from '../../plan/batch.ts';
import { numberOf } from '../../plan/figure.ts';
import type { Reader } from '../../words/amount.ts';
import { isFelt, measuredAmountText, measuredText, scaleText } from '../../words/measured.ts';
import { figureText } from '../plan-text/rows.ts';
import { boxes, paragraph, type Section, table } from '../print/page.ts';

export function feedSection(batch: BatchPlan, reader: Reader): readonly Section[] {
  const doses = [...batch.doses.values()];
  if (doses.length === 0) return [];
  const count = numberOf(batch.loads) ?? 1;
  const several = doses.length > 1;
  const heading = `Feed${count > 1 ? ', for each load' : ''}${several ? ', in this order' : ''}`;
  const columns = [
    { name: 'add' },
    { name: 'amount', align: 'right' },
    { name: 'measured as' },
    { name: 'done' },
  ] as const;
  const rows = doses.map(dose => [
    dose.name,
    amountCell(dose, reader),
    waysCell(dose, reader),
    boxes(count, `${dose.name} added`),
  ]);
  const apart = apartText(doses);
  return [
    {
      heading,
      blocks: [
        table('Feeds in the order in which they are added', columns, rows),
        ...(several ? [paragraph('Stir each one in before the next.')] : []),
        ...(apart === undefined ? [] : [paragraph(apart)]),
      ],
    },
  ];
}

function amountCell({ perLoad, measured }: DosePlan, reader: Reader): string {
  if (perLoad.kind === 'unknown' || measured.kind !== 'measured') return figureText(perLoad, reader);
  return measuredAmountText(measured, perLoad.quantity.dimension, reader);
}

function waysCell({ perLoad, measured, error }: DosePlan, reader: Reader): string {
  if (perLoad.kind === 'unknown') return '';
  const { dimension } = perLoad.quantity;
  if (measured.kind === 'no-tool') return 'no tool of the recipe measures it';
  if (measured.kind === 'too-small') {
    return `less than the finest tool measures: ${scaleText({ dimension, value: measured.smallest }, reader)} with ${measured.tool}`;
  }
  const ways = measuredText(measured, dimension, reader)?.replaceAll('`', '') ?? '';
  const exact = figureText(perLoad, reader);
  const isSame = exact === measuredAmountText(measured, dimension, reader);
  return isFelt(error) && !isSame ? `${ways} (exact: ${exact})` : ways;
}

/** Calcium drops out with sulfate and phosphate where strong solutions or dry salts of them meet (common practice). */
function apartText(doses: readonly DosePlan[]): string | undefined {
  const brings = ({ adds }: DosePlan, element: 'Ca' | 'S' | 'P'): boolean => (numberOf(adds.get(element)) ?? 0) > 0;
  const calcium = doses.filter(dose => brings(dose, 'Ca'));
  const partners = doses.filter(dose => brings(dose, 'S') || brings(dose, 'P'));
  const isApart = calcium.some(one => partners.some(other => other !== one));
  if (!isApart) return undefined;
  const names = (of: readonly DosePlan[]): string => of.map(({ name }) => name).join(', ');
  return `Calcium (${names(calcium)}) and sulfate or phosphate (${names(partners)}) must never meet undiluted: they fall out as a white solid. Rinse the tool between them.`;
}
