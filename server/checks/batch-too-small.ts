// A batch that does not fill the containers it is mixed for.

import { unitOf } from '../../schema/find-unit.ts';
import type { FindingOf } from '../../schema/findings.ts';
import { plainNumber } from '../../schema/number.ts';
import { valueAt } from '../../schema/place.ts';
import { convert, type Quantity } from '../../schema/quantity.ts';
import type { Recipe } from '../recipe/recipe.ts';
import { eachBatch } from './each.ts';

export const batchTooSmall = eachBatch((plan, show): readonly FindingOf<'batch-too-small'>[] => {
  const { volume, needed, needs, serves } = plan;
  if (needs.batch.value.volume?.kind !== 'volume' || volume.kind === 'unknown' || needed.kind === 'unknown') return [];
  const short = needed.quantity.value - volume.quantity.value;
  if (short <= needed.quantity.value * slack) return [];
  const shortfall: Quantity<'volume'> = { dimension: 'volume', value: short };
  const at = valueAt([...needs.batch.path, 'volume']);
  const enough = roundedUp(needed.quantity, show);
  return [
    {
      code: 'batch-too-small',
      params: { batch: needs.batch.name, volume: volume.quantity, needed: needed.quantity, shortfall },
      at,
      related: serves.map(({ planting, kind }) => ({
        at: valueAt([...planting.path, 'container'], planting.file),
        says: kind === 'fill' ? `the fill of ${planting.name}` : `the change of ${planting.name}`,
      })),
      fixes: [
        { title: 'Mix as needed', edits: [{ kind: 'replace', at, text: 'as needed' }], sure: false },
        { title: `Mix ${enough}`, edits: [{ kind: 'replace', at, text: enough }], sure: false },
      ],
    },
  ];
});

/** Noise of adding fills up. */
const slack = 1e-6;

/** At least as much, in two digits as one would measure it into a vessel. */
function roundedUp(needed: Quantity<'volume'>, show: Recipe['show']): string {
  const unit = unitOf(show === 'us' ? 'gal' : 'L');
  const number = convert(needed, unit);
  const step = 10 ** (Math.floor(Math.log10(number)) - 1);
  return `${plainNumber(Number((Math.ceil(number / step - slack) * step).toPrecision(12)))} ${unit.symbol}`;
}
