// A feed: what it is made of, what a litre holds at its label's rate, and the batches it goes into.

import type { FeedPlan } from '../../plan/feed.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Reader } from '../../words/amount.ts';
import { elementsText, elementWants } from '../../words/elements.ts';
import { figureText, sourcesText, wantsText } from '../../words/figure.ts';
import { blocks, code, lines } from './blocks.ts';
import { supplyLine } from './supply.ts';

export function feedBlock(feed: FeedPlan, plan: Plan, reader: Reader): string | undefined {
  const shares = [...feed.shares].map(([element, share]) => `${element} ${figureText(share, reader)}`);
  const uses = usesLine(feed.feed.name, plan, reader);
  return blocks(
    lines(shares.length === 0 ? undefined : `Of its mass: ${shares.join(', ')}.`, atLabelLine(feed)),
    uses,
    supplyLine(feed.feed.name, plan, reader, uses),
    sourcesText(feed.atLabel.values()),
  );
}

function atLabelLine({ atLabel, label }: FeedPlan): string | undefined {
  if (label.kind === 'unknown') return undefined;
  const adds = elementsText(atLabel);
  if (adds !== undefined) return `At the label’s rate a litre gets ${adds}.`;
  const wants = elementWants(atLabel);
  return wants.length === 0 ? undefined : `At the label’s rate: ${wantsText(wants)}`;
}

function usesLine(name: string, plan: Plan, reader: Reader): string | undefined {
  const uses = [...plan.batches].flatMap(([batch, { doses }]) => {
    const dose = doses.get(name);
    return dose === undefined ? [] : [`${code(batch)} takes ${figureText(dose.exact, reader)}`];
  });
  return uses.length === 0 ? undefined : `${uses.join(', ')}.`;
}
