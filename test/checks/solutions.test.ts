// Findings about a batch as a solution: what is said, and above all what is not.

import { expect, test } from 'vitest';
import { textOf } from '../../server/syntax/document.ts';
import { checkFindings } from '../check-findings.ts';
import { drawApplied } from '../draw.ts';
import { recipe } from '../recipe.ts';

test('a recipe that is in order, mixed in tap water and adjusted, stays clean', () => {
  checkFindings(recipe`
    recipe: 1
    waters:
      mains: { pH: 7.4, alkalinity: 60 mg/L CaCO3, temperature: 18 °C, ions: { Ca: 20 mg/L, Mg: 4 mg/L, Na: 9 mg/L, Cl: 12 mg/L, SO4: 14 mg/L } }
    feeds:
      leaf: { analysis: { N: 3 %, P2O5: 2 %, K2O: 4 %, Ca: 1 % }, nitrogen: { nitrate: 2.6 %, ammonium: 0.4 % }, density: 1.1 kg/L }
    adjusters:
      down: { acid: { phosphoric: 8 % }, density: 1.04 kg/L }
    targets:
      leafy: { pH: 5.5..6.5, pH-aim: 5.8, EC: 0.8..1.6 mS/cm, N: 80..160 mg/L }
    batches:
      cress:
        water: mains
        volume: 20 L
        target: leafy
        feed: { leaf: 3 mL/L }
        adjust: { with: down }
        readings: [{ pH: 6.6, EC: 1.1 mS/cm }, { add: { down: 10 mL }, pH: 5.9 }]
  `);
});

test('a measured pH outside the band names a cautious first step, and the fix writes it down', () => {
  const marked = recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 20 mg/L CaCO3 }
    adjusters:
      down: { acid: { citric: 5 % }, density: 1.02 kg/L }
    targets:
      herb: { pH: 5.6..6.4, pH-aim: 6.0 }
    batches:
      mint:
        water: rain
        volume: 12 L
        target: herb
        air: open
        adjust: { with: down }
        readings:
          - { pH: 7.1 }
          #       ^^^ ph-out-of-band: \`mint\` was measured at pH 7.1; the band of \`herb\` is 5.6..6.4. A cautious first step is
  `;
  checkFindings(marked);
  const snapshot = marked.snapshot();
  const fix = snapshot.findings.find(({ finding }) => finding.code === 'ph-out-of-band')?.finding.fixes?.[0];
  expect(drawApplied(textOf(snapshot.document), fix?.edits ?? [])).toMatch(/- \{ add: \{ down: [\d.]+ mL \} \}/);
});

test('a predicted pH is not called out of the band within the error of the prediction', () => {
  checkFindings(recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 60 mg/L CaCO3, pH: 6.55 }
    targets:
      herb: { pH: 5.6..6.5 }
    batches:
      mint: { water: rain, volume: 12 L, target: herb }
  `);
});

test('a predicted pH that is somewhat past the aim is no wrong way yet', () => {
  checkFindings(
    recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 60 mg/L CaCO3, pH: 6.0 }
    adjusters:
      down: { acid: { citric: 5 % }, density: 1.02 kg/L }
    batches:
      mint: { water: rain, volume: 12 L, adjust: { with: down, to: 6.05 } }
  `,
  );
});

test('a bottle that holds calcium and phosphate is made to keep, and a short report is no whole analysis', () => {
  checkFindings(recipe`
    recipe: 1
    waters:
      rain: { pH: 7, alkalinity: 100 mg/L CaCO3, ions: { Ca: 20 mg/L, Cl: 8 mg/L } }
    feeds:
      leaf: { analysis: { P2O5: 2 %, Ca: 1 % }, density: 1.1 kg/L }
      bitter-salt: { formula: MgSO4·7H2O }
    batches:
      mint: { water: rain, volume: 12 L, feed: { leaf: 2 mL/L, bitter-salt: 0.1 g/L } }
  `);
});

test('what is missing for a dose that is asked for is said once, where it would be written', () => {
  checkFindings(recipe`
    recipe: 1
    waters:
      mains: { pH: 7.6 }
    # ^^^^^ not-computed: Not computed: the adjustment of \`mint\`. What is missing is the alkalinity
    adjusters:
      down: { acid: { citric: 5 % }, density: 1.02 kg/L }
    batches:
      mint: { water: mains, volume: 12 L, adjust: { with: down, to: 6.0 } }
      sage: { water: mains, volume: 12 L, adjust: { with: down, to: 6.0 } }
  `);
});

test('a water that cannot be is said once, however many batches rest on it', () => {
  checkFindings(recipe`
    recipe: 1
    waters:
      bog: { pH: 4.1, alkalinity: 20 mg/L CaCO3 }
      #                           ^^^^^^^^^^^^^ water-impossible
    adjusters:
      ash: { base: { KHCO3: 99 % } }
    batches:
      mint: { water: bog, volume: 12 L, adjust: { with: ash, to: 6.0 } }
      sage: { water: bog, volume: 12 L, adjust: { with: ash, to: 6.0 } }
  `);
});
