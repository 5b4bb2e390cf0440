// What stays unknown because something is not written: one finding for each gap, however much hangs on it. What another
// finding explains already is left out by `echoes.ts`.

import type { FindingOf } from '../../schema/findings.ts';
import type { Place } from '../../schema/place.ts';
import { adjustmentOf, finalOf, isWrongWay } from '../plan/adjust.ts';
import { type BatchPlan, unknownContent } from '../plan/batch.ts';
import type { Figure, Want } from '../plan/figure.ts';
import { foundInEach } from '../plan/made-of-each.ts';
import { memo } from '../plan/memo.ts';
import type { Plan, PlantingPlan } from '../plan/plan.ts';
import { batchesIn, plantingsIn, wholePlan } from './each.ts';

export const notComputed = wholePlan((plan: Plan): readonly FindingOf<'not-computed'>[] => {
  const gaps = new Map<string, Gap>();
  for (const gap of [...ofPlantings(plantingsIn(plan)), ...ofBatches(batchesIn(plan))]) {
    const { at, says } = gap.want;
    const key = `${at.file ?? ''}/${at.path.join('/')}/${says}`;
    if (!gaps.has(key)) gaps.set(key, gap);
  }
  return [...gaps.values()].map(toFinding);
});

/** Something that is not known, where it would be shown, and what it wants. */
interface Gap {
  readonly what: string;
  readonly at: Place;
  readonly want: Want;
}

const ofPlantings = foundInEach(({ planting, fill }: PlantingPlan): readonly Gap[] =>
  gapsOf(`the fill of \`${planting.name}\``, { path: planting.path, part: { kind: 'key' } }, [fill.volume]),
);

const ofBatch = memo((batch: BatchPlan): readonly Gap[] => {
  const { name, path } = batch.needs.batch;
  const volumeAt: Place = { path: [...path, 'volume'], part: { kind: 'value' } };
  const loadsAt: Place = { path: [...path, 'mix-in'], part: { kind: 'value' } };
  return [
    ...gapsOf(`the volume of \`${name}\``, volumeAt, [batch.volume]),
    ...gapsOf(`the loads of \`${name}\``, loadsAt, [batch.loads]),
    ...[...batch.doses.values()].flatMap(dose => [
      ...gapsOf(`the dose of \`${dose.name}\` in \`${name}\``, dose.at, [dose.exact]),
      ...gapsOf(`what \`${dose.name}\` brings of each element`, dose.at, [
        ...unknownContent(dose),
        ...dose.adds.values(),
      ]),
    ]),
    ...gapsOf(
      `the adjustment of \`${name}\``,
      { path: [...path, 'adjust'], part: { kind: 'key' } },
      adjustmentGap(batch),
    ),
    ...gapsOf(`the elements of \`${name}\``, { path, part: { kind: 'key' } }, [...batch.elements.values()]),
  ];
});

const ofBatches = foundInEach(ofBatch);

/** An adjustment that is asked for and not known; one that goes the wrong way has a finding of its own. */
function adjustmentGap(batch: BatchPlan): readonly Figure[] {
  const adjustment = adjustmentOf(batch);
  // Where a batch ends is asked for by other checks, and is known only where the amount is.
  if (adjustment === undefined || finalOf(batch).solution !== undefined || isWrongWay(adjustment)) return [];
  return [adjustment.exact];
}

function gapsOf(what: string, at: Place, figures: readonly Figure[]): readonly Gap[] {
  return figures.flatMap(figure => (figure.kind === 'unknown' ? figure.wants.map(want => ({ what, at, want })) : []));
}

/** The finding stands where the value would be written; where that is another file, at what is not computed. */
function toFinding({ what, at, want }: Gap): FindingOf<'not-computed'> {
  const params = { what, wants: [want.says] };
  const related = [{ at: want.at, says: `where ${want.says} would be written` }];
  return { code: 'not-computed', params, at: want.at.file === undefined ? want.at : at, related };
}
