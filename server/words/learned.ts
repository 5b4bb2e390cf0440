// What a batch's readings show of an adjuster, in words: `your acid acts as 9.4 %`.

import type { Learned } from '../plan/learn.ts';
import { learnedShare, strengthOf } from '../plan/strength.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { amountText, type Reader } from './amount.ts';
import { figureText } from './figure.ts';

export function learnedText(
  { factor, meqPerUnit, spread, steps, unit }: Learned,
  adjuster: Sourced<Adjuster> | undefined,
  name: string,
  reader: Reader,
): string {
  const from = `Learned from ${steps === 1 ? 'one measured step' : `${steps} measured steps`}: \`${name}\` acts as`;
  const give = `give or take ${amountText({ dimension: 'fraction', value: spread }, reader)} of that`;
  const strength = adjuster === undefined ? undefined : strengthOf(adjuster);
  if (factor !== undefined && strength?.kind === 'strength') {
    const [part] = strength.parts;
    if (part !== undefined && strength.parts.length === 1) {
      const acts = figureText(learnedShare({ share: part.share }, factor), reader);
      return `${from} ${acts} ${part.title} where ${figureText(part.share, reader)} is written, ${give}.`;
    }
    return `${from} ${amountText({ dimension: 'number', value: factor }, reader)} times what is written, ${give}.`;
  }
  if (meqPerUnit === undefined) return `${from} the readings show, ${give}.`;
  return `${from} ${amountText({ dimension: 'number', value: meqPerUnit }, reader)} meq in a ${unit}, ${give}.`;
}
