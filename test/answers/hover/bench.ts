// A recipe for the hovers of chemistry: it borrows waters, feeds, adjusters, tools and a target from a shelf beside it.

import { dedent, type MarkedRecipe, markedRecipe } from '../../recipe.ts';

const shelf = `
recipe: 1
waters:
  brook: { pH: 7.6, alkalinity: 110 mg/L CaCO3, temperature: 15 °C, ions: { Ca: 38 mg/L, Mg: 6 mg/L, Na: 9 mg/L, Cl: 14 mg/L, SO4: 16 mg/L } }
feeds:
  lime: { formula: Ca(NO3)2·4H2O }
  salt: { formula: KNO3 }
  phos: { formula: KH2PO4 }
  moss: { label: 2 mL/L, analysis: { N: 5 %, P2O5: 3 %, K2O: 6 % }, nitrogen: { nitrate: 4 %, ammonium: 1 % }, density: 1.15 kg/L }
adjusters:
  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
  thumb: { response: -0.6 pH at 0.3 mL/L }
  up: { base: { KHCO3: 99 % } }
tools:
  syringe: { smallest: 0.5 mL, largest: 10 mL }
  can: { holds: 12 L }
targets: { low: { pH: 5.5..6.5, pH-aim: 5.8, EC: 1.0..1.6 mS/cm } }
`.trim();

/** The recipe of a template, which may name what stands on the shelf. */
export function bench([text = '']: TemplateStringsArray): MarkedRecipe {
  return markedRecipe(`recipe: 1\nuse: [./shelf.grow.yaml]\n${dedent(text)}\n#-- shelf.grow.yaml\n${shelf}\n`);
}
