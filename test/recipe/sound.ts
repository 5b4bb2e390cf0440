// A sound part for recipes that are broken elsewhere: whatever is wrong beside it, its dose must be computed.

import { expect } from 'vitest';
import { showIn } from '../../server/words/amount.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { checkFindings } from '../check-findings.ts';
import { type MarkedRecipe, markedRecipe } from '../recipe.ts';

/** The dose of a feed in a batch as a reader sees it, or undefined where it is not known. */
export function dose(snapshot: Snapshot, batch: string, feed: string): string | undefined {
  const exact = snapshot.plan.batches.get(batch)?.doses.get(feed)?.exact;
  return exact?.kind === 'known' ? showIn(snapshot.recipe.show).amount(exact.quantity) : undefined;
}

/** What stands in every recipe of this file and must be computed whatever else is wrong. */
export const sound = `feeds:
  green: { label: 2 mL/L, analysis: { N: 5 % }, density: 1.1 kg/L }
batches:
  opening: { water: rain, volume: 20 L, feed: { green: label } }
`;

/** The marked findings, no others, and the dose of the sound batch. */
export function check(marked: MarkedRecipe): void {
  checkFindings(marked);
  expect(dose(marked.snapshot(), 'opening', 'green')).toBe('40 mL');
}

/** A recipe with the sound part behind some lines of its own, of which the waters must be the last. */
export function withSound(strings: TemplateStringsArray): MarkedRecipe {
  return markedRecipe(`${dedented(strings.join(''))}  rain: { alkalinity: 0 mg/L CaCO3 }\n${sound}`);
}

function dedented(text: string): string {
  const lines = text.replace(/^\n/u, '').split('\n');
  const indent = /^ */u.exec(lines[0] ?? '')?.[0].length ?? 0;
  return lines.map(line => line.slice(Math.min(indent, line.search(/\S|$/u)))).join('\n');
}
