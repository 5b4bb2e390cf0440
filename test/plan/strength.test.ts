import { expect, test } from 'vitest';
import { gatheredAll } from '../../server/plan/gather.ts';
import { strengthOf } from '../../server/plan/strength.ts';
import { amountText } from '../../server/words/amount.ts';
import { recipe } from '../recipe.ts';

const { plan } = recipe`
  recipe: 1
  adjusters:
    strong: { acid: { nitric: 10 % }, density: 1.054 kg/L }
    half: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
    lye: { base: { KOH: 5 % }, density: 1.04 kg/L }
    powder: { acid: { citric: 100 % } }
    drops: { response: -0.6 pH at 0.3 mL/L }
    nothing: {}
`.snapshot();

function strength(name: string) {
  const adjuster = gatheredAll(plan.scope, 'adjusters').find(one => one.name === name);
  if (adjuster === undefined) throw new Error(`no ${name}`);
  return strengthOf(adjuster);
}

/** By hand, with the molar masses of HNO3 63.01, H3PO4 97.99, KOH 56.11 and citric acid 192.12 g/mol. */
test.each([
  // A strong acid counts with every proton: 0.10 × 1054 ÷ 63.01 = 1.673 mol/L, so 1.67 meq in a mL.
  ['strong', '1.67 mol/L', '1.67'],
  // Phosphoric acid gives one proton and, at pH 5.8, a little of the second (pK2 7.2): 0.12 × 1060 ÷ 97.99 = 1.298 mol/L.
  ['half', '1.3 mol/L', '1.35'],
  // 0.05 × 1040 ÷ 56.11 = 0.9268 mol/L.
  ['lye', '927 mmol/L', '0.927'],
  // Of the three protons of citric acid about a fifth of the last stays (pK3 6.4, less in salts): 1 g is 5.205 mmol.
  ['powder', undefined, undefined],
])('%s', (name, molar, perUnit) => {
  const found = strength(name);
  if (found?.kind !== 'strength') throw new Error('no strength');
  const [part] = found.parts;
  expect(part?.molar?.kind === 'known' ? amountText(part.molar.quantity, 'metric') : undefined).toBe(molar);
  if (found.perUnit.kind !== 'known') throw new Error('not known');
  if (perUnit !== undefined) expect(amountText(found.perUnit.quantity, 'metric')).toBe(perUnit);
  else {
    expect(found.perUnit.quantity.value).toBeGreaterThan(2 * 5.205);
    expect(found.perUnit.quantity.value).toBeLessThan(3 * 5.205);
  }
});

test('a known effect is no strength, and nothing is none', () => {
  expect(strength('drops')).toBeUndefined();
  expect(strength('nothing')?.kind).toBe('unknown');
});
