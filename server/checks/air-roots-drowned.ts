// A top-up in the log that leaves less air than the planting keeps, after its roots have begun to hang.

import { unitOf } from '../../schema/find-unit.ts';
import type { FindingOf, Fix } from '../../schema/findings.ts';
import { plainNumber } from '../../schema/number.ts';
import { type Place, valueAt } from '../../schema/place.ts';
import { convert } from '../../schema/quantity.ts';
import { airGapOf } from '../plan/fill.ts';
import { isForecast } from '../plan/season.ts';
import { eachSeason } from './each.ts';

export const airRootsDrowned = eachSeason(({ plan, forecast }): readonly FindingOf<'air-roots-drowned'>[] => {
  const gap = airGapOf(plan.planting);
  if (!isForecast(forecast) || gap.kind === 'unknown') return [];
  return forecast.events.flatMap((event): readonly FindingOf<'air-roots-drowned'>[] => {
    if (event.kind !== 'logged-top-up' || event.room_L === undefined) return [];
    const { log, volume_L, room_L } = event;
    if (volume_L <= room_L + unseen_L) return [];
    const at = valueAt(['log', log, 'top-up', 'volume']);
    const params = {
      planting: plan.planting.name,
      added: { dimension: 'volume', value: volume_L },
      room: { dimension: 'volume', value: room_L },
      gap: gap.quantity,
      written: gap.by.kind === 'given',
    } as const;
    return [{ code: 'air-roots-drowned', params, at, fixes: fixOf(at, room_L) }];
  });
});

/** Less than a jug shows. */
const unseen_L = 0.005;

/** The volume that the gap allows, in two digits and not more than it; none where there is no room at all. */
function fixOf(at: Place, room_L: number): readonly Fix[] {
  const mL = convert({ dimension: 'volume', value: room_L }, unitOf('mL'));
  if (mL < 10) return [];
  const step = 10 ** (Math.floor(Math.log10(mL)) - 1);
  const text = `${plainNumber(Math.floor(mL / step) * step)} mL`;
  return [{ title: `Top up with ${text}`, edits: [{ kind: 'replace', at, text }], sure: false }];
}
