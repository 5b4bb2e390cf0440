// An adjuster: how strong it is by what is written and by what readings showed, what it is used for, and its hazards.

import { adjustmentOf } from '../../plan/adjust.ts';
import type { Plan } from '../../plan/plan.ts';
import { strengthOf } from '../../plan/strength.ts';
import type { Adjuster } from '../../recipe/seen.ts';
import type { Sourced } from '../../recipe/use.ts';
import type { Reader } from '../../words/amount.ts';
import { figureText, sourcesText, wantsText } from '../../words/figure.ts';
import { learnedText } from '../../words/learned.ts';
import { blocks, code, lines } from './blocks.ts';
import { cautionBlock } from './cautions.ts';
import { supplyLine } from './supply.ts';

export function adjusterBlock(adjuster: Sourced<Adjuster>, plan: Plan, reader: Reader): string {
  const strength = strengthOf(adjuster);
  const figures =
    strength?.kind === 'strength' ? [strength.perUnit, ...strength.parts.flatMap(part => part.molar ?? [])] : [];
  const uses = usesLines(adjuster.name, plan, reader);
  return blocks(
    strengthLines(adjuster, reader),
    uses,
    supplyLine(adjuster.name, plan, reader, uses),
    cautionBlock(adjuster.value),
    sourcesText(figures),
  );
}

function strengthLines(adjuster: Sourced<Adjuster>, reader: Reader): string | undefined {
  const strength = strengthOf(adjuster);
  if (strength === undefined) return 'Known by its response, which holds for one water and one starting pH only.';
  if (strength.kind === 'unknown') return wantsText(strength.wants);
  const { parts, perUnit, unit, does } = strength;
  const held = parts.flatMap(({ title, molar }) =>
    molar === undefined ? [] : [`${figureText(molar, reader)} ${title}`],
  );
  const counts = `${figureText(perUnit, reader)} meq in a ${unit}`;
  return lines(
    does === 'acid' ? 'Lowers the pH.' : 'Raises the pH.',
    held.length === 0 ? undefined : `Holds ${held.join(' and ')}.`,
    `At pH 5.8 it counts for ${counts}.`,
  );
}

/** What each batch takes of it, and what that batch's readings show of its strength. */
function usesLines(name: string, plan: Plan, reader: Reader): string | undefined {
  const said = [...plan.batches].flatMap(([batch, planned]) => {
    if (planned.needs.batch.value.adjust?.with !== name) return [];
    const adjustment = adjustmentOf(planned);
    if (adjustment === undefined) return [];
    const learned = adjustment.learned;
    const shown = learned === undefined ? '' : ` ${learnedText(learned, adjustment.adjuster, name, reader)}`;
    return [
      `- ${code(batch)}: about ${figureText(adjustment.exact, reader)} to pH ${figureText(adjustment.to, reader)}.${shown}`,
    ];
  });
  return said.length === 0 ? undefined : said.join('\n');
}
