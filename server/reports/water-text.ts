// Source waters as text: each as drawn and after standing in air, how well its report adds up, and the elements it brings.

import { elementsOfWater } from '../plan/elements.ts';
import { numberOf } from '../plan/figure.ts';
import { ionGapOf } from '../plan/ion-gap.ts';
import { statedOf } from '../plan/stated-water.ts';
import { planWater, type WaterPlan } from '../plan/water.ts';
import type { Water } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { amountText, type Reader } from '../words/amount.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { block, figureText, type Lines, missingText, row } from './plan-text/rows.ts';
import { cloudLines, driftLines } from './plan-text/solution.ts';
import type { Paint } from './print/paint.ts';
import { printable } from './print/terminal.ts';
import { watersOf } from './water-json.ts';

/** The waters that a recipe sees, or the one that is named; undefined where it has none of that name. */
export function waterText(snapshot: Snapshot, paint: Paint, name?: string): string | undefined {
  const waters = watersOf(snapshot, name)?.map(water => linesOf(water, snapshot.recipe.show));
  return waters
    ?.map(([heading = '', ...lines]) => [paint.strong(printable(heading)), ...lines, ''].join('\n'))
    .join('\n');
}

function linesOf(water: Sourced<Water>, reader: Reader): Lines {
  const { EC, temperature } = water.value;
  const plan = planWater(water);
  const elements = [...elementsOfWater(water)].map(([element, figure]) => row(element, figureText(figure, reader), 2));
  return [
    `Water ${water.name}`,
    ...(temperature === undefined ? [] : [row('temperature', amountText(temperature, reader))]),
    ...(EC === undefined ? [] : [row('EC as stated', amountText(EC, reader))]),
    ...(plan.solved.kind === 'solved' ? solvedLines(plan, reader) : unsolvedLines(plan, reader)),
    ...block('a litre brings', elements),
  ];
}

/** What is stated, and what is missing for the rest. */
function unsolvedLines(plan: WaterPlan, reader: Reader): Lines {
  const { pH, alkalinity } = statedOf(plan);
  return [
    ...(pH.kind === 'known' ? [row('pH', figureText(pH, reader))] : []),
    ...(alkalinity.kind === 'known' ? [row('alkalinity', figureText(alkalinity, reader))] : []),
    ...(plan.solved.kind === 'unknown' ? [row('not known', `for want of ${missingText(plan.solved.wants)}`)] : []),
  ];
}

function solvedLines(plan: WaterPlan, reader: Reader): Lines {
  const { figures, inAir, carbon } = plan;
  const { alkalinity } = figures;
  const inCharges = alkalinity.kind === 'known' ? `, ${amountText(alkalinity.quantity, reader)}` : '';
  return [
    row('alkalinity', `${figureText(alkalinity, reader)}${inCharges}`),
    ...block('as drawn', [
      row('pH', figureText(figures.pH, reader), 2),
      row('pH in air', figureText(inAir.pH, reader), 2),
      ...driftLines({ figures, inAir }),
      row('EC at 25 °C', figureText(figures.EC, reader), 2),
      row('carbon', figureText(carbon.total, reader), 2),
      row('CO₂', figureText(carbon.CO2, reader), 2),
      row('HCO₃⁻', figureText(carbon.HCO3, reader), 2),
      row('CO₃²⁻', figureText(carbon.CO3, reader), 2),
      row('ionic strength', figureText(figures.ionicStrength, reader), 2),
      ...cloudLines(figures),
    ]),
    ...block('ions of the report', gapLines(plan, reader)),
  ];
}

/** How far the report is from adding up. The gap is said as it is: nothing is added to close it. */
function gapLines(plan: WaterPlan, reader: Reader): Lines {
  const gap = ionGapOf(plan);
  if (gap === undefined || !gap.isWhole || gap.charge.kind === 'unknown') return [];
  const missing = (numberOf(gap.charge) ?? 0) < 0 ? 'cations' : 'anions';
  const size = `${figureText(gap.charge, reader)}, ${figureText(gap.share, reader)}`.replaceAll('-', '');
  const trust = gap.isLarge
    ? 'a good report is within 5 %: an ion is missing or wrong, and what follows from it is uncertain'
    : 'as good reports are';
  return [row('balance', `${size} of ${missing} are missing; ${trust}`, 2)];
}
