// A water whose pH and alkalinity contradict each other, with the nearest that can be.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { eachWater } from './each-water.ts';

export const waterImpossible = eachWater(({ water, impossible }): readonly FindingOf<'water-impossible'>[] => {
  if (impossible === undefined) return [];
  const { pH = 7 } = water.value;
  const nearest = `${Math.round(impossible.nearest * 50.0435)} mg/L CaCO3`;
  const reason = {
    'acid-with-alkalinity': `below pH 4.3 no alkalinity is left, and its pH is ${pH}`,
    'alkalinity-too-high': `at pH ${pH} it would hold more CO2 than stays dissolved; an alkalinity up to about ${nearest} can be`,
    'alkalinity-too-low': `at pH ${pH} its other ions alone come to an alkalinity of about ${nearest}`,
  }[impossible.why];
  const key = water.value.alkalinity === undefined ? 'ions' : 'alkalinity';
  return [{ code: 'water-impossible', params: { water: water.name, reason }, at: valueAt([...water.path, key]) }];
});
