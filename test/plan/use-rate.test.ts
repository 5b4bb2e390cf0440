import { expect, test } from 'vitest';
import { numberOf } from '../../server/plan/figure.ts';
import { gathered } from '../../server/plan/gather.ts';
import { useOver, usesOnDays } from '../../server/plan/use-rate.ts';
import { recipe } from '../recipe.ts';

const { plan } = recipe`
  recipe: 1
  containers: { pot: { inside: { cylinder: { diameter: 30 cm, height: 40 cm } } } }
  stages:
    written: { lasts: 9 d, uses: 55 mL/d }
    published: { lasts: 30 d }
    bright: { lasts: 30 d, light: 22 mol/m2/d }
  plantings:
    row: { crop: lettuce, container: pot, plants: 3, transplant: 2027-03-01, fill: 30 cm, stages: [written, published, bright] }
`.snapshot();

test.each(['written', 'published', 'bright'])(
  'what is drunk on each day of %s is the number that its figure explains',
  name => {
    const planting = gathered(plan.scope, 'plantings', 'row');
    const stage = gathered(plan.scope, 'stages', name);
    if (planting === undefined || stage === undefined) throw new Error('nothing there');
    for (const bound of ['low', 'mid', 'high'] as const) {
      const days = usesOnDays(planting, stage, { from: 9, to: 39, days: 69 }, bound);
      const explained = days.map((_, index) =>
        numberOf(useOver(planting, stage, { from: 9 + index, to: 10 + index, days: 69 }, bound)),
      );
      expect(days).toEqual(explained);
      expect(days.length).toBe(30);
    }
  },
);
