// Containers and plantings for programs: fills, and what the forecast expects of one container day by day.

import { formatDate } from '../../../schema/date.ts';
import { valueAt } from '../../../schema/place.ts';
import type { PlanJson } from '../../../schema/plan-json.ts';
import { finalOf } from '../../plan/adjust.ts';
import type { ContainerPlan } from '../../plan/container.ts';
import type { Want } from '../../plan/figure.ts';
import type { DatedStage, Forecast } from '../../plan/forecast.ts';
import { lifeUseOf } from '../../plan/life-use.ts';
import type { Plan } from '../../plan/plan.ts';
import { isForecast, type PlantingSeason } from '../../plan/season.ts';
import { find } from '../../recipe/use.ts';
import { type Gaps, type Key, tidy } from './gaps.ts';

type PlantingJson = PlanJson['plantings'][string];

export function containerJson(name: string, container: ContainerPlan, gaps: Gaps): PlanJson['containers'][string] {
  const key = ['containers', name];
  return {
    brimful_L: gaps.number([...key, 'brimful_L'], container.brimful),
    netCupLine_cm: gaps.number([...key, 'netCupLine_cm'], container.netCupLine),
    netCupLine_L: gaps.number([...key, 'netCupLine_L'], container.netCupVolume),
  };
}

export function plantingJson(name: string, season: PlantingSeason, plan: Plan, gaps: Gaps): PlantingJson {
  const key = ['plantings', name];
  const { fill, containers } = season.plan;
  return {
    fill_cm: gaps.number([...key, 'fill_cm'], fill.level),
    fill_L: gaps.number([...key, 'fill_L'], fill.volume),
    containers: gaps.number([...key, 'containers'], containers),
    perContainer: true,
    ...forecastJson(key, season, gaps),
    lifeUse_L: lifeUseJson([...key, 'lifeUse_L'], season, gaps),
    stages: stagesJson([...key, 'stages'], season, plan, gaps),
  };
}

function forecastJson(
  key: Key,
  { forecast, stages }: PlantingSeason,
  gaps: Gaps,
): Pick<PlantingJson, 'days' | 'topUps' | 'lastsCrop' | 'runsLow' | 'learnedUse'> {
  if (!isForecast(forecast)) {
    for (const of of ['days', 'topUps', 'lastsCrop', 'runsLow']) gaps.wants([...key, of], forecast.wants);
    return { days: [], topUps: [], lastsCrop: null, runsLow: null, learnedUse: null };
  }
  const { days, topUps, lastsCrop, runsLow, learnedUse } = forecast;
  const noEC = 'kind' in stages ? [] : wantsOfEC(stages);
  // One line for all days: what is missing is the same for each.
  if (days.some(day => day.EC === undefined)) gaps.wants([...key, 'days'], noEC);
  if (topUps.some(topUp => topUp.EC === undefined)) gaps.wants([...key, 'topUps'], noEC);
  return {
    days: daysJson(days),
    topUps: topUps.map(topUp => ({
      date: formatDate(topUp.date),
      volume_L: tidy(topUp.volume_L),
      level_cm: tidy(topUp.level_cm),
      with: topUp.with,
      batch: topUp.batch ?? null,
      water: topUp.water ?? null,
      EC_mS_per_cm: tidyOr(topUp.EC),
    })),
    lastsCrop,
    runsLow: runsLow === undefined ? null : formatDate(runsLow),
    learnedUse: tidyOr(learnedUse),
  };
}

function daysJson(days: Forecast['days']): PlantingJson['days'] {
  return days.map(({ date, stage, level_cm, volume_L, airGap_cm, EC }) => ({
    date: formatDate(date),
    stage,
    level_cm: tidy(level_cm),
    volume_L: tidy(volume_L),
    airGap_cm: tidy(airGap_cm),
    EC_mS_per_cm: tidyOr(EC),
  }));
}

/** Why the EC of a planting's solution is not known. */
function wantsOfEC(stages: readonly DatedStage[]): readonly Want[] {
  const wants = stages.flatMap(({ stage, batch }): readonly Want[] => {
    if (batch === undefined) {
      return [{ says: `the batch that feeds ${stage.name}`, at: valueAt([...stage.path, 'batch'], stage.file) }];
    }
    const { EC } = finalOf(batch).figures;
    return EC.kind === 'unknown' ? EC.wants : [];
  });
  return wants.length > 0 ? wants : [{ says: 'some solution left in the container', at: valueAt([]) }];
}

function lifeUseJson(key: Key, { plan, stages }: PlantingSeason, gaps: Gaps): PlantingJson['lifeUse_L'] {
  if ('kind' in stages)
    return { low: gaps.wants([...key, 'low'], stages.wants), high: gaps.wants([...key, 'high'], stages.wants) };
  const { low, high } = lifeUseOf(plan, stages);
  return { low: gaps.number([...key, 'low'], low), high: gaps.number([...key, 'high'], high) };
}

function stagesJson(
  key: Key,
  { plan: { planting }, stages }: PlantingSeason,
  plan: Plan,
  gaps: Gaps,
): PlantingJson['stages'] {
  if (!('kind' in stages)) {
    return stages.map(({ stage, from, to }) => ({
      name: stage.name,
      from: formatDate(from),
      to: formatDate(to),
      batch: stage.value.batch ?? null,
    }));
  }
  const names = (planting.value.stages ?? []).flatMap(name => name ?? []);
  return names.map((name, index) => ({
    name,
    from: gaps.wants([...key, index, 'from'], stages.wants),
    to: gaps.wants([...key, index, 'to'], stages.wants),
    batch: find(plan.scope, 'stages', name)?.value.batch ?? null,
  }));
}

function tidyOr(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) ? null : tidy(value);
}
