// What the European rules for labels ask for on an acid or base of this strength. Said once, where its strength is written.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import type { AnyQuantity } from '../../schema/quantity.ts';
import { type Hazard, hazards, isReagent, reagents } from '../chemistry/tables/acids.ts';
import { eachOwn } from './each.ts';

export const acidHazard = eachOwn('adjusters', ({ name, value, path }): readonly FindingOf<'acid-hazard'>[] =>
  (['acid', 'base'] as const).flatMap(kind =>
    Object.entries(value[kind] ?? {}).flatMap(([substance, share]): readonly FindingOf<'acid-hazard'>[] => {
      const statements = share === undefined ? [] : statementsOf(substance, share);
      if (share === undefined || statements.length === 0) return [];
      const title = isReagent(substance) ? reagents[substance].title : substance;
      const params = { adjuster: name, substance: title, share, statements };
      return [{ code: 'acid-hazard', params, at: valueAt([...path, kind, substance]) }];
    }),
  ),
);

/** The statements of the highest band that is reached, the gravest first. */
function statementsOf(substance: string, share: AnyQuantity<'fraction'>) {
  if (!isReagent(substance)) return [];
  const bands: readonly { readonly from: number; readonly hazards: readonly Hazard[] }[] = reagents[substance].bands;
  const reached = bands.filter(band => band.from <= share.value + 1e-9).at(-1)?.hazards ?? [];
  return [...reached]
    .sort((a, b) => Number(isGrave(b)) - Number(isGrave(a)))
    .map(code => ({ code, says: hazards[code] }));
}

function isGrave(code: Hazard): boolean {
  return code === 'H314' || code === 'H318' || code === 'H331';
}
