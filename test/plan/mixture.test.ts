// A batch as mixed and after standing in air.

import { expect, test } from 'vitest';
import { accountOf } from '../../server/plan/figure.ts';
import { recipe } from '../recipe.ts';
import { known, shown, workedOut } from './worked-out.ts';

test('Hoagland and Arnon’s solution 2 comes out as published', () => {
  const { mixture, batch } = workedOut(recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 0 mg/L CaCO3, temperature: 25 °C }
    feeds:
      map: { formula: NH4H2PO4 }
      saltpetre: { formula: KNO3 }
      calcium-nitrate: { formula: Ca(NO3)2·4H2O }
      bitter-salt: { formula: MgSO4·7H2O }
    batches:
      full:
        water: rain
        volume: 1 L
        air: open
        feed: { map: 0.115026 g/L, saltpetre: 0.606619 g/L, calcium-nitrate: 0.944596 g/L, bitter-salt: 0.492949 g/L }
  `);
  const { predicted } = mixture('full');
  // Circular 347: N 210, P 31, K 234, Ca 160; PHREEQC 3.8.9: pH 4.928, EC 2.05 to 2.13.
  expect(known(batch('full').elements.get('N'))).toBeCloseTo(210, 0);
  expect(known(predicted.pH)).toBeCloseTo(4.928, 1);
  expect(known(predicted.EC)).toBeGreaterThan(2.047);
  expect(known(predicted.EC)).toBeLessThan(2.134);
  expect(known(predicted.saturation.gypsum)).toBeCloseTo(-1.2, 1);
});

test('fresh from the tap and after standing are two pH values, shown together', () => {
  const { mixture } = workedOut(recipe`
    recipe: 1
    waters:
      mains: { pH: 7.4, alkalinity: 140 mg/L CaCO3 }
    batches:
      fresh: { water: mains, volume: 10 L }
      stood: { water: mains, volume: 10 L, air: open }
  `);
  const fresh = mixture('fresh');
  const stood = mixture('stood');
  expect(known(fresh.predicted.pH)).toBeCloseTo(7.4, 6);
  expect(known(fresh.inAir.pH)).toBeGreaterThan(8.3);
  expect(known(stood.predicted.pH)).toBeCloseTo(known(fresh.inAir.pH), 6);
  expect(stood.inAir.pH.kind).toBe('known');
});

test('a feed by mass and by volume with its density are the same', () => {
  const { mixture } = workedOut(recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 0 mg/L CaCO3 }
    feeds:
      leaf: { analysis: { N: 4 %, P2O5: 2 %, K2O: 5 % }, nitrogen: { nitrate: 3 %, ammonium: 1 % }, density: 1.25 kg/L }
    batches:
      poured: { water: rain, volume: 10 L, feed: { leaf: 2 mL/L } }
      weighed: { water: rain, volume: 10 L, feed: { leaf: 2.5 g/L } }
  `);
  expect(known(mixture('poured').predicted.pH)).toBeCloseTo(known(mixture('weighed').predicted.pH), 9);
  expect(known(mixture('poured').predicted.EC)).toBeCloseTo(known(mixture('weighed').predicted.EC), 9);
});

test('the ions that a label does not name are carried as a charge of their own, and said', () => {
  const { mixture } = workedOut(recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 0 mg/L CaCO3 }
    feeds:
      potash: { analysis: { K2O: 12 % } }
    batches:
      only: { water: rain, volume: 10 L, feed: { potash: 1 g/L } }
  `);
  const { pH } = mixture('only').predicted;
  const account = pH.kind === 'known' && pH.by.kind === 'step' ? accountOf(pH.by) : [];
  const unnamed = account.find(({ what }) => what === 'ions that the labels do not name, by their charge');
  // 0.12 × 1000 mg/L ÷ 94.196 × 2 of potassium needs as much of something negative.
  expect(unnamed?.value).toBeCloseTo(-2.548, 2);
  expect(mixture('only').solved).toMatchObject({ kind: 'solved', estimated: true });
});

test('each gap is said where it is, and the other batches are computed', () => {
  const { mixture } = workedOut(recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 0 mg/L CaCO3 }
    feeds:
      thick: { analysis: { N: 4 % } }
      secret: { label: 2 mL/L }
      salt: { formula: KNO3 }
    batches:
      no-density: { water: rain, volume: 10 L, feed: { thick: 2 mL/L } }
      no-content: { water: rain, volume: 10 L, feed: { secret: label } }
      no-feed: { water: rain, volume: 10 L, feed: { nothing: 2 mL/L } }
      hot: { water: rain, volume: 10 L, temperature: 90 °C }
      fine: { water: rain, volume: 10 L, feed: { salt: 1 g/L } }
  `);
  expect(shown(mixture('no-density').predicted.pH)).toBe('wants the density of thick');
  expect(shown(mixture('no-content').predicted.EC)).toBe('wants the analysis or formula of secret');
  expect(shown(mixture('no-feed').predicted.pH)).toBe('wants the feed nothing');
  expect(shown(mixture('hot').predicted.pH)).toBe('wants a temperature from 5 to 40 °C');
  expect(known(mixture('fine').predicted.EC)).toBeCloseTo(1.36, 1);
});
