// A plan over time: each planting's stages, forecast and tasks, and what the whole plan uses. Worked out when it is asked for.

import type { Day } from '../../schema/date.ts';
import type { LogEntry, Planting, Stage, Water } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { BatchPlan } from './batch.ts';
import { datedStages } from './dated-stages.ts';
import { numberOf, type Unknown } from './figure.ts';
import { type DatedStage, type Forecast, type ForecastNeeds, forecastOf } from './forecast.ts';
import { gathered, gatheredAll, keptList } from './gather.ts';
import { latest, memo, unlessChanged } from './memo.ts';
import { mixingDays, mixingsOf } from './mixing.ts';
import type { Plan, PlantingPlan } from './plan.ts';
import { type Supply, suppliesOf } from './supplies.ts';
import { type Task, tasksOf } from './timeline.ts';
import { planWater } from './water.ts';

export interface Season {
  readonly plantings: ReadonlyMap<string, PlantingSeason>;
  /** Of all plantings, in the order of days. */
  readonly tasks: readonly Task[];
  readonly supplies: ReadonlyMap<string, Supply>;
}

export interface PlantingSeason {
  readonly plan: PlantingPlan;
  readonly stages: readonly DatedStage[] | Unknown;
  readonly forecast: Forecast | Unknown;
}

export function isForecast(forecast: Forecast | Unknown): forecast is Forecast {
  return !('kind' in forecast);
}

export const seasonOf = memo((plan: Plan): Season => {
  const plantings = plantingSeasons(plan);
  const mixings = mixingsOf(plan, plantings);
  const tasks = tasksOf([...plantings.values()], mixingDays(mixings));
  return { plantings, tasks, supplies: suppliesOf(mixings) };
});

/** The plantings alone: for checks, which ask for no tasks and supplies. */
export const plantingSeasons = memo((plan: Plan): Season['plantings'] => {
  const seasons = new Map<string, PlantingSeason>();
  for (const [name, planned] of plan.plantings) seasons.set(name, plantingSeasonOf(plan, planned));
  return seasons;
});

/** The season of one planting. */
export function plantingSeasonOf(plan: Plan, planned: PlantingPlan): PlantingSeason {
  const { scope, batches } = plan;
  const stages = gatheredAll(scope, 'stages');
  const log = logsByPlanting(scope.recipe.log).get(planned.planting.name) ?? noLog;
  const names = batchesOf(planned.planting, stages, log);
  const mixed = names.map(name => batches.get(name));
  const dependsOn = [scope.recipe.start, stages, gatheredAll(scope, 'waters'), log, ...mixed];
  return remembered(planned, dependsOn, () => workOut(plan, planned, log));
}

const remembered = unlessChanged<PlantingPlan, PlantingSeason>();

/** The batches from which something can get into a planting's containers. */
const batchesOf = latest(
  ({ value }: Sourced<Planting>, stages: readonly Sourced<Stage>[], log: ForecastNeeds['log']): readonly string[] => {
    const fed = (value.stages ?? []).map(name => stagesByName(stages).get(name ?? '')?.value.batch);
    const names = [...fed, ...log.map(({ entry }) => entry['top-up']?.batch)];
    return [...new Set(names.filter(name => name !== undefined))];
  },
);

const stagesByName = memo(
  (stages: readonly Sourced<Stage>[]): ReadonlyMap<string, Sourced<Stage>> =>
    new Map(stages.map(stage => [stage.name, stage])),
);

function workOut(plan: Plan, planned: PlantingPlan, log: ForecastNeeds['log']): PlantingSeason {
  const { planting, fill } = planned;
  const stages = datedStages(plan.scope, planting, plan.batches);
  if ('kind' in stages) return keepUndated(planned, stages);
  const kept = keptList(stages.map(({ stage, from, to, batch }) => keepStage(stage, from, to, batch)));
  const names = new Set(log.map(({ entry }) => entry['top-up']?.batch));
  const pouredFrom = [...names].flatMap(name => plan.batches.get(name ?? '') ?? []);
  // Only the waters that can be poured in here, so that another one may change without a new forecast.
  const waters = new Set([
    ...log.map(({ entry }) => entry['top-up']?.water),
    ...kept.map(({ batch }) => batch?.needs.water?.name),
  ]);
  const waterEC = ecsOf(keptList([...waters].flatMap(name => gathered(plan.scope, 'waters', name) ?? [])));
  const needs = keepNeeds(planting, fill, kept, log, keptList(pouredFrom), waterEC);
  return keepSeason(planned, kept, forecastOf(needs));
}

const noLog: ForecastNeeds['log'] = keptList<ForecastNeeds['log'][number]>([]);

const keepUndated = memo((plan: PlantingPlan, stages: Unknown): PlantingSeason => ({ plan, stages, forecast: stages }));

const keepSeason = memo(
  (plan: PlantingPlan, stages: readonly DatedStage[], forecast: Forecast | Unknown): PlantingSeason => ({
    plan,
    stages,
    forecast,
  }),
);

const keepStage = memo(
  (stage: DatedStage['stage'], from: Day, to: Day, batch: BatchPlan | undefined): DatedStage => ({
    stage,
    from,
    to,
    batch,
  }),
);

const keepNeeds = memo(
  (
    planting: ForecastNeeds['planting'],
    fill: ForecastNeeds['fill'],
    stages: ForecastNeeds['stages'],
    log: ForecastNeeds['log'],
    pouredFrom: ForecastNeeds['pouredFrom'],
    waterEC: ForecastNeeds['waterEC'],
  ): ForecastNeeds => ({ planting, fill, stages, log, pouredFrom, waterEC }),
);

const keepEntry = memo((index: number, entry: LogEntry) => ({ index, entry }));

/** The log entries about each planting. */
const logsByPlanting = memo((log: readonly (LogEntry | undefined)[]): ReadonlyMap<string, ForecastNeeds['log']> => {
  const found = new Map<string, { readonly index: number; readonly entry: LogEntry }[]>();
  for (const [index, entry] of log.entries()) {
    if (entry?.planting === undefined) continue;
    const of = found.get(entry.planting);
    if (of === undefined) found.set(entry.planting, [keepEntry(index, entry)]);
    else of.push(keepEntry(index, entry));
  }
  return new Map([...found].map(([name, entries]) => [name, keptList(entries)]));
});

/** EC of waters by name, where it is known. */
const ecsOf = memo((waters: readonly Sourced<Water>[]): ReadonlyMap<string, number> => {
  const known = waters.flatMap(water => {
    const EC = water.value.EC?.value ?? numberOf(planWater(water).figures.EC);
    return EC === undefined ? [] : [[water.name, EC] as const];
  });
  return new Map(known);
});
