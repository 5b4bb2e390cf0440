// Atomic weights as IUPAC abridges them (CIAAW 2021): N 14.007, H 1.008, C 12.011, O 15.999, K 39.098, Ca 40.078, S 32.06.

import { expect, test } from 'vitest';
import { numberOf } from '../../server/plan/figure.ts';
import { checkFigure } from '../check-figure.ts';
import { recipe } from '../recipe.ts';

const nitrogenIn = (feed: string, water = '{}', dose = '1 g/L') =>
  recipe`
    recipe: 1
    waters: { brook: ${water} }
    feeds: { salt: ${feed} }
    batches: { tub: { water: brook, volume: 10 L, feed: { salt: ${dose} } } }
  `;

test.each([
  ['KNO3', { nitrate: 14.007 / 101.102 }],
  ['Ca(NO3)2·4H2O', { nitrate: 28.014 / 236.146 }],
  ['NH4NO3', { nitrate: 14.007 / 80.043, ammonium: 14.007 / 80.043 }],
  ['(NH4)2SO4', { ammonium: 28.014 / 132.134 }],
  ['NH4H2PO4', { ammonium: 14.007 / 115.025 }],
  ['CO(NH2)2', { urea: 28.014 / 60.056 }],
  ['CH4N2O', { urea: 28.014 / 60.056 }],
  ['5Ca(NO3)2.NH4NO3.10H2O', { nitrate: (11 * 14.007) / 1080.643, ammonium: 14.007 / 1080.643 }],
  ['K2SO4', {}],
])('the forms of nitrogen in %s', (formula, expected: Record<string, number>) => {
  const { plan } = nitrogenIn(`{ formula: ${formula} }`).snapshot();
  const nitrogen = plan.batches.get('tub')?.nitrogen;
  for (const form of ['nitrate', 'ammonium', 'urea'] as const) {
    expect(numberOf(nitrogen?.[form])).toBeCloseTo(1000 * (expected[form] ?? 0), 1);
  }
});

test('purity counts', () => {
  checkFigure(nitrogenIn('{ formula: KNO3, purity: 50 % }'), 'batches/tub/nitrogen/nitrate', '69.3 mg/L');
});

test('the water’s nitrate and ammonium are there too, however they are stated', () => {
  const ions = (text: string) => nitrogenIn('{ formula: K2SO4 }', `{ ions: { ${text} } }`);
  checkFigure(ions('NO3: 62 mg/L'), 'batches/tub/nitrogen/nitrate', '14 mg/L');
  checkFigure(ions('NO3-N: 14 mg/L'), 'batches/tub/nitrogen/nitrate', '14 mg/L');
  checkFigure(ions('NH4: 1 mmol/L'), 'batches/tub/nitrogen/ammonium', '14 mg/L');
});

test('a label’s forms are taken as stated', () => {
  const label = '{ analysis: { N: 5 % }, nitrogen: { nitrate: 4.2 %, ammonium: 0.8 % }, density: 1 kg/L }';
  const labelled = nitrogenIn(label, '{}', '1 mL/L');
  checkFigure(labelled, 'batches/tub/nitrogen/nitrate', '42 mg/L');
  checkFigure(labelled, 'batches/tub/nitrogen/ammonium', '8 mg/L');
  checkFigure(labelled, 'batches/tub/nitrogen/urea', '0 mg/L');
});

test('what a label does not split is not guessed', () => {
  const total = nitrogenIn('{ analysis: { N: 5 % } }');
  checkFigure(
    total,
    'batches/tub/nitrogen/nitrate',
    'Not known yet; missing: how the nitrogen of salt splits into forms (feeds › salt › nitrogen).',
  );
  checkFigure(total, 'batches/tub/elements/N', '50 mg/L');
  const half = nitrogenIn('{ analysis: { N: 5 % }, nitrogen: { nitrate: 2 % } }');
  checkFigure(half, 'batches/tub/nitrogen/nitrate', '20 mg/L');
  checkFigure(
    half,
    'batches/tub/nitrogen/urea',
    'Not known yet; missing: how the nitrogen of salt splits into forms (feeds › salt › nitrogen).',
  );
});

test('a feed that says nothing of what is in it leaves every total unknown', () => {
  const both = recipe`
    recipe: 1
    feeds: { salt: { formula: KNO3 }, bottle: { label: 1 mL/L } }
    batches: { tub: { volume: 10 L, feed: { salt: 1 g/L, bottle: label } } }
  `;
  const analysis = 'the analysis or formula of bottle (feeds › bottle › analysis)';
  checkFigure(both, 'batches/tub/elements/N', `Not known yet; missing: ${analysis}.`);
  const density = 'the density of bottle (feeds › bottle › density)';
  checkFigure(both, 'batches/tub/nitrogen/nitrate', `Not known yet; missing: ${density}, ${analysis}.`);
});

test('what has no nitrogen adds none, though its density is not known', () => {
  const potash = nitrogenIn('{ analysis: { K2O: 10 % } }', '{}', '1 mL/L');
  checkFigure(potash, 'batches/tub/nitrogen/nitrate', '0 mg/L');
});
