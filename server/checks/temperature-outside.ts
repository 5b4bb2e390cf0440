// A water or batch colder or hotter than the constants of the chemistry reach.

import type { FindingOf } from '../../schema/findings.ts';
import { type Path, valueAt } from '../../schema/place.ts';
import { solvedTemperatures } from '../plan/water.ts';
import { eachOwn, together } from './each.ts';

const waters = eachOwn('waters', ({ value, path }) => outside(value.temperature?.value, path));
const batches = eachOwn('batches', ({ value, path }) => outside(value.temperature?.value, path));

export const temperatureOutside = together(waters, batches);

function outside(value: number | undefined, path: Path): readonly FindingOf<'temperature-outside'>[] {
  const { low, high } = solvedTemperatures;
  if (value === undefined || (low <= value && value <= high)) return [];
  const celsius = (of: number) => ({ dimension: 'temperature', value: of }) as const;
  const params = { temperature: celsius(value), low: celsius(low), high: celsius(high) };
  return [{ code: 'temperature-outside', params, at: valueAt([...path, 'temperature']) }];
}
