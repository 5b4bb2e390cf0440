// A task of the timeline with the amounts that it takes, for sheets and calendars.

import { numberOf } from '../plan/figure.ts';
import { isForecast, seasonOf } from '../plan/season.ts';
import type { Task } from '../plan/timeline.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { amountOf, figureText } from './plan-text/rows.ts';

/** How much the task takes: `3 × 2.1 L, up to 14.5 cm`; undefined where it takes nothing. */
export function takenText({ kind, about, date }: Task, { plan, recipe }: Snapshot): string | undefined {
  const reader = recipe.show;
  if (kind === 'mix') {
    const batch = plan.batches.get(about);
    return batch === undefined ? undefined : figureText(batch.volume, reader);
  }
  const planting = plan.plantings.get(about);
  if (planting === undefined) return undefined;
  const { fill, containers } = planting;
  if (kind === 'fill') {
    return `${figureText(containers, reader)} × ${figureText(fill.volume, reader)}, up to ${figureText(fill.level, reader)}`;
  }
  if (kind === 'change') {
    return `${figureText(containers, reader)} × ${figureText(fill.changeVolume, reader)}, up to ${figureText(fill.changeLevel, reader)}`;
  }
  const forecast = seasonOf(plan).plantings.get(about)?.forecast;
  if (kind !== 'top-up' || forecast === undefined || !isForecast(forecast)) return undefined;
  const topUp = forecast.topUps.find(one => one.date === date);
  if (topUp === undefined) return undefined;
  const each = amountOf(topUp.volume_L, 'volume', reader);
  return `about ${numberOf(containers) ?? 1} × ${each}, never above ${amountOf(topUp.level_cm, 'length', reader)}`;
}
