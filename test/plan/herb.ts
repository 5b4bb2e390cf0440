// A batch of herbs on a bench with a few bottles: the small world in which readings and adjustments are tested.

import { markedRecipe } from '../recipe.ts';
import { type WorkedOut, workedOut } from './worked-out.ts';

const bench = `recipe: 1
waters:
  mains: { pH: 7.6, alkalinity: 120 mg/L CaCO3, temperature: 20 °C }
feeds:
  salt: { formula: KH2PO4 }
adjusters:
  down: { acid: { phosphoric: 10 % }, density: 1.053 kg/L }
  crystals: { acid: { citric: 100 % } }
  up: { base: { KOH: 5 % }, density: 1.04 kg/L }
  thumb: { response: -0.5 pH at 0.2 mL/L }
  bottle: { density: 1.1 kg/L }
  bare: { acid: { nitric: 20 % } }
`;

/** Ten litres of tap water as the batch `herb`, with what else is written of it. */
export function herb(written: string, more = ''): WorkedOut {
  const text = `${bench}${more}batches:\n  herb: { water: mains, volume: 10 L, ${written} }\n`;
  return workedOut(markedRecipe(text));
}
