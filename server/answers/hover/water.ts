// A source water: its pH as drawn and after standing in air, its EC and carbon, how well the report adds up, and what it brings.

import { unitOf, unitsFor } from '../../../schema/find-unit.ts';
import { cloudingOf } from '../../plan/clouding.ts';
import { driftInAir, driftOf } from '../../plan/difference.ts';
import { elementsOfWater } from '../../plan/elements.ts';
import { ionGapOf } from '../../plan/ion-gap.ts';
import { planWater, type WaterPlan } from '../../plan/water.ts';
import type { Water } from '../../recipe/seen.ts';
import type { Sourced } from '../../recipe/use.ts';
import { amountIn, amountText, countIn, type Reader } from '../../words/amount.ts';
import { cloudingText } from '../../words/clouding.ts';
import { elementsText } from '../../words/elements.ts';
import { figureText, sourcesText, wantsText } from '../../words/figure.ts';
import { blocks, lines, row, table } from './blocks.ts';

export function waterBlock(water: Sourced<Water>, reader: Reader): string | undefined {
  const plan = planWater(water);
  const { alkalinity } = water.value;
  const brings = elementsText(elementsOfWater(water));
  const inUnits = alkalinity && unitsFor('charge-per-volume').filter(unit => !unit.rare);
  const { pH, EC } = plan.figures;
  return blocks(
    lines(
      inUnits && `Alkalinity: ${row(...inUnits.map(unit => amountIn(alkalinity, unit)))}`,
      brings === undefined ? undefined : `Brings ${brings}.`,
    ),
    plan.solved.kind === 'unknown' ? `pH and EC: ${wantsText(plan.solved.wants)}` : solvedBlock(plan, reader),
    sourcesText([...elementsOfWater(water).values(), pH, EC]),
  );
}

function solvedBlock(plan: WaterPlan, reader: Reader): string {
  const { figures, inAir, water } = plan;
  const stated = water.value.EC === undefined ? '' : `, ${amountText(water.value.EC, reader)} stated`;
  const pH = table(
    ['', 'as drawn', 'after standing in air'],
    [['pH', figureText(figures.pH, reader), figureText(inAir.pH, reader)]],
    [],
  );
  const cloud = cloudingText(cloudingOf(figures));
  const stood = cloudingText(cloudingOf(inAir));
  return blocks(
    pH,
    lines(
      driftSentence(plan),
      `EC at 25 °C: ${figureText(figures.EC, reader)} computed${stated}`,
      carbonLine(plan),
      plan.water.value.alkalinity === undefined ? `Alkalinity: ${figureText(figures.alkalinity, reader)}` : undefined,
      gapLine(plan, reader),
      cloud === undefined ? undefined : `As drawn it ${cloud}.`,
      stood === undefined || stood === cloud ? undefined : `After standing in air it ${stood}.`,
    ),
  );
}

function driftSentence({ figures, inAir }: WaterPlan): string | undefined {
  const drift = driftOf(driftInAir({ inAir: inAir.pH, now: figures.pH }));
  if (drift === 'climbs') return 'It holds more CO₂ than air gives: its pH climbs as that leaves.';
  return drift === 'falls' ? 'It holds less CO₂ than air gives: its pH falls as that enters.' : undefined;
}

const millimoles = unitOf('mmol/L');

function carbonLine({ carbon }: WaterPlan): string | undefined {
  const forms = [
    ['CO₂', carbon.CO2],
    ['HCO₃⁻', carbon.HCO3],
    ['CO₃²⁻', carbon.CO3],
  ] as const;
  const said = forms.flatMap(([name, figure]) =>
    figure.kind === 'known' ? [`${name} ${countIn(figure.quantity, millimoles)}`] : [],
  );
  return said.length === 0 ? undefined : `${said.join(', ')} mmol/L`;
}

/** How far the report is from adding up; nothing where it names only one kind of ion. */
function gapLine(plan: WaterPlan, reader: Reader): string | undefined {
  const gap = ionGapOf(plan);
  if (gap === undefined || !gap.isWhole || gap.charge.kind === 'unknown') return undefined;
  const missing = gap.charge.quantity.value < 0 ? 'cations' : 'anions';
  const amount = `${figureText(gap.charge, reader)} (${figureText(gap.share, reader)})`.replaceAll('-', '');
  const more = gap.isLarge ? '; a good report is within 5 %, so look it through' : '';
  return `The report is short of ${missing} by ${amount}${more}.`;
}
