import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { recipe } from '../../recipe.ts';

test('a name stands for its entry: the water of a batch', () => {
  checkHover(recipe`
    recipe: 1
    waters:
      well: { pH: 7.4, alkalinity: 3 meq/L, ions: { Ca: 60 mg/L, NO3: 20 mg/L } }
    batches:
      first: { water: w$0ell, volume: 20 L }
  `).toMatchInlineSnapshot(`
    "  first: { water: well, volume: 20 L }
                      ▔↑▔▔
    well, a water: pH 7.4, alkalinity 150 mg/L CaCO3

    Alkalinity: 3 meq/L · 150 mg/L CaCO3 · 8.41 dKH · 183 mg/L HCO3
    Brings N 4.52, Ca 60 mg/L.

    |  | as drawn | after standing in air |
    | pH | 7.4 | 8.57 |

    It holds more CO₂ than air gives: its pH climbs as that leaves.
    EC at 25 °C: 0.303 mS/cm computed
    CO₂ 0.262, HCO₃⁻ 2.94, CO₃²⁻ 0.00387 mmol/L
    The report is short of cations by 0.328 meq/L (5.28 %); a good report is within 5 %, so look it through.
    As drawn it is near to clouding with calcium carbonate (calcite, index 0.0).
    After standing in air it may cloud with calcium carbonate (calcite, index 1.1).

    Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Common practice in the trade · Robinson, R.A. and Stokes, R.H.: Electrolyte Solutions, 2nd edition. Butterworths, London"
  `);
});

test('a feed: its elements, a litre at the label rate, the batches it goes into', () => {
  checkHover(recipe`
    recipe: 1
    feeds:
      mo$0ss: { label: 2 mL/L, analysis: { N: 5 %, P2O5: 4 % }, density: 1.15 kg/L }
    batches:
      first: { volume: 20 L, feed: { moss: label } }
  `).toMatchInlineSnapshot(`
    "  moss: { label: 2 mL/L, analysis: { N: 5 %, P2O5: 4 % }, density: 1.15 kg/L }
      ▔▔↑▔
    moss, a feed: 2 mL/L by its label

    Of its mass: N 5 %, P 1.75 %.
    At the label’s rate a litre gets N 115, P 40.2 mg/L.

    first takes 40 mL.

    AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600"
  `);
});

test('an adjuster always comes with cautions, milder ones for a weak acid', () => {
  checkHover(recipe`
    recipe: 1
    adjusters:
      le$0mon: { acid: { citric: 5 % }, density: 1.02 kg/L }
  `).toMatchInlineSnapshot(`
    "  lemon: { acid: { citric: 5 % }, density: 1.02 kg/L }
      ▔▔↑▔▔
    lemon, an adjuster: citric acid 5 %

    Lowers the pH.
    Holds 265 mmol/L citric acid.
    At pH 5.8 it counts for 0.571 meq in a mL.

    ⚠ Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600"
  `);
});

test('an adjuster known by its effect alone is taken to burn', () => {
  checkHover(recipe`
    recipe: 1
    adjusters:
      $0drops: { response: 0.5 pH at 0.2 mL/L }
  `).toMatchInlineSnapshot(`
    "  drops: { response: 0.5 pH at 0.2 mL/L }
      ↑▔▔▔▔
    drops, an adjuster: 0.5 pH at 0.2 mL/L

    Known by its response, which holds for one water and one starting pH only.

    ⚠ Burns skin and eyes. Wear gloves and eye protection. Pour the base into water, never water onto the base: it heats up. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides."
  `);
});

test('a container: brimful, to the net cup, a centimetre', () => {
  checkHover(recipe`
    recipe: 1
    containers:
      $0jug:
        inside: { cylinder: { diameter: 10 cm, height: 20 cm } }
        net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
  `).toMatchInlineSnapshot(`
    "  jug:
      ↑▔▔
    jug, a container: 1.47 L brimful, 1.18 L to the net cup

    Brimful: 1.47 L
    To the net cup: 1.18 L, at a level of 15 cm
    A centimetre of level: 78.5 mL

    volume = 1.18 L − 0 mL = 1.18 L

    - level: 15 cm, the level at which the solution touches the net cup
    - inside up to the level: 1.18 L
    - displaced by the net cup: 0 mL

    Volumes of cylinder, box, frustum and prismatoid (elementary geometry) · The grow recipe format, version 1"
  `);
});

test('a planting: its fill, one and all, and its stages', () => {
  checkHover(recipe`
    recipe: 1
    containers:
      jug:
        inside: { cylinder: { diameter: 10 cm, height: 20 cm } }
        net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
    stages: { start: { lasts: 3 wk, batch: first } }
    plantings:
      $0mint: { crop: mint, container: jug, count: 4, fill: 1 cm into net cup, stages: [start] }
    batches: { first: { volume: 8 L } }
  `).toMatchInlineSnapshot(`
    "  mint: { crop: mint, container: jug, count: 4, fill: 1 cm into net cup, stages: [start] }
      ↑▔▔▔
    mint, a planting: mint, 4 × 1.24 L

    Not known yet; missing: the day of transplanting (plantings › mint › transplant).

    Each container: 1.24 L, to a level of 16 cm
    4 containers together: 4.97 L

    volume = 1.26 L − 13.9 mL = 1.24 L

    - level: 16 cm, the fill level
    - inside up to the level: 1.26 L
    - displaced by the net cup: 13.9 mL

    level = 15 cm + 1 cm = 16 cm

    - line: 15 cm, the level at which the solution touches the net cup
    - depth: 1 cm, plantings › mint › fill

    Volumes of cylinder, box, frustum and prismatoid (elementary geometry) · Kratky, B.A.: A suspended net-pot, non-circulating hydroponic method for commercial production of leafy, romaine, and semi-head lettuce. University of Hawaii CTAHR, VC-1 · The grow recipe format, version 1"
  `);
});

test('a tool: what is measured with it and mixed in it', () => {
  checkHover(recipe`
    recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    tools:
      ju$0g: { steps: [25 mL, 10 mL], holds: 12 L }
    batches:
      first: { volume: 20 L, mix-in: jug, feed: { moss: label } }
  `).toMatchInlineSnapshot(`
    "  jug: { steps: [25 mL, 10 mL], holds: 12 L }
      ▔▔↑
    jug, a tool: 25 mL, 10 mL, holds 12 L

    first is mixed in it: 2 × 10 L.
    moss for first: 2 × 10 mL with jug."
  `);
});

test('a stage and what it aims at', () => {
  checkHover(recipe`
    recipe: 1
    targets: { low: { pH: 5.5..6.5, EC: 0.8..1.2 mS/cm } }
    stages: { start: { lasts: 3 wk, target: low, batch: first } }
    plantings:
      mint: { stages: [st$0art] }
    batches: { first: { volume: 8 L } }
  `).toMatchInlineSnapshot(`
    "  mint: { stages: [start] }
                       ▔▔↑▔▔
    Not known yet; missing: the day of transplanting (plantings › mint › transplant)."
  `);
});

test('a tool in the units of a reader in the United States', () => {
  checkHover(recipe`
    recipe: 1
    show: us
    tools:
      sp$0oon: { steps: [1.25 mL, 5 mL, 15 mL, 7 mL] }
  `).toMatchInlineSnapshot(`
    "  spoon: { steps: [1.25 mL, 5 mL, 15 mL, 7 mL] }
      ▔▔↑▔▔
    spoon, a tool: 0.25 tsp, 1 tsp, 1 tbsp, 7 mL"
  `);
});
