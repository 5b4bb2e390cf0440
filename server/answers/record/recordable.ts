// What of a recipe can be recorded, with a few words beside each name by which to choose.

import type { Recipe } from '../../recipe/recipe.ts';
import { all } from '../../recipe/use.ts';
import { amountText } from '../../words/amount.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

export interface Choice {
  readonly name: string;
  readonly detail: string;
}

export interface Choices {
  readonly plantings: readonly Choice[];
  readonly batches: readonly Choice[];
  readonly waters: readonly Choice[];
  /** What may have been added to a batch: adjusters, then feeds. */
  readonly adders: readonly Choice[];
}

/** Plantings and batches are the recipe's own: only they can be written to. */
export function recordable({ recipe, scope }: Snapshot): Choices {
  const { plantings, batches } = recipe.sections;
  return {
    plantings: [...plantings].map(([name, { crop, container, count = 1 }]) => ({
      name,
      detail: [
        ...(crop === undefined ? [] : [crop]),
        ...(container === undefined ? [] : [`${count} × ${container}`]),
      ].join(', '),
    })),
    batches: [...batches].map(([name, batch]) => ({ name, detail: batchDetail(batch, recipe) })),
    waters: all(scope, 'waters').map(({ name, value: { pH } }) => ({
      name,
      detail: pH === undefined ? '' : `pH ${pH}`,
    })),
    adders: [
      ...all(scope, 'adjusters').map(({ name }) => ({ name, detail: 'adjuster' })),
      ...all(scope, 'feeds').map(({ name }) => ({ name, detail: 'feed' })),
    ],
  };
}

function batchDetail(
  { volume, water }: { readonly volume?: BatchVolume; readonly water?: string },
  { show }: Recipe,
): string {
  const amount = volume?.kind === 'as-needed' ? 'as needed' : volume && amountText(volume.volume, show);
  return [amount, water].filter(part => part !== undefined).join(' of ');
}

type BatchVolume = NonNullable<NonNullable<ReturnType<Recipe['sections']['batches']['get']>>['volume']>;
