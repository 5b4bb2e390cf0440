// A small shelf of entries, and recipes that go on behind it: what completion has to choose from.

import { dedented } from '../check-completion.ts';
import { type MarkedRecipe, markedRecipe } from '../recipe.ts';

const shelf = `recipe: 1
waters:
  spring: { pH: 7.8, alkalinity: 140 mg/L CaCO3 }
feeds:
  leafy: { label: 2 mL/L }
  fruity: { label: 3 mL/L }
adjusters:
  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
tools:
  can: { holds: 12 L }
stages:
  rooting: { lasts: 18 d }
  bearing: { lasts: 70 d }
`;

/** A recipe that goes on behind the shelf. */
export function onShelf(text: string): MarkedRecipe {
  return markedRecipe(`${shelf}${dedented(text).join('\n')}\n`);
}
