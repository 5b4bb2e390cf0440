// A plan over time: each planting's stages, forecast and tasks, and what the whole plan uses. Worked out when it is asked for.

import type { Day } from '../../schema/date.ts';
import type { LogEntry, Planting, Water } from '../recipe/seen.ts';
import type { Scope, Sourced } from '../recipe/use.ts';
import type { BatchPlan } from './batch.ts';
import { datedStages } from './dated-stages.ts';
import { numberOf, type Unknown } from './figure.ts';
import { type DatedStage, type Forecast, type ForecastNeeds, forecastOf } from './forecast.ts';
import { gathered, gatheredAll, keptList, stagesFedBy } from './gather.ts';
import { type Logged, loggedIn } from './logged.ts';
import { changedBetween, madeOfEach, valuesOf } from './made-of-each.ts';
import { memo, unlessChanged } from './memo.ts';
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
  /** The log entries of the planting. */
  readonly log: readonly Logged[];
}

export function isForecast(forecast: Forecast | Unknown): forecast is Forecast {
  return !('kind' in forecast);
}

export const seasonOf = memo((plan: Plan): Season => {
  const plantings = new Map(plantingSeasons(plan).map(season => [season.plan.planting.name, season]));
  const mixings = mixingsOf(plan, plantings);
  const tasks = tasksOf([...plantings.values()], mixingDays(mixings));
  return { plantings, tasks, supplies: suppliesOf(mixings) };
});

/** The plantings alone: for checks, which ask for no tasks and supplies. */
export function plantingSeasons(plan: Plan): readonly PlantingSeason[] {
  return seasonsOf(valuesOf(plan.plantings), plan);
}

const seasonsOf = madeOfEach(
  (planned: PlantingPlan, plan: Plan) => plantingSeasonOf(plan, planned),
  ([was], [is]) => {
    if (was.scope.recipe.start !== is.scope.recipe.start) return () => true;
    const waters = changedBetween(gatheredAll(was.scope, 'waters'), gatheredAll(is.scope, 'waters'));
    const batches = changedBetween(valuesOf(was.batches), valuesOf(is.batches)).map(({ needs }) => needs.batch);
    const poured = new Set([...waters, ...batches].map(({ name }) => name));
    const fed = batches.flatMap(({ name }) => stagesFedBy(is.scope, name));
    const changed = changedBetween(gatheredAll(was.scope, 'stages'), gatheredAll(is.scope, 'stages'));
    const stages = new Set([...fed, ...changed].map(({ name }) => name));
    const isSameLog = was.scope.recipe.log === is.scope.recipe.log;
    return ({ planting }, { log }) =>
      (!isSameLog && log !== logOf(is.scope, planting)) ||
      (planting.value.stages ?? []).some(name => stages.has(name ?? '')) ||
      log.some(({ entry }) => isPouredFrom(entry, poured));
  },
);

function isPouredFrom({ 'top-up': topUp }: LogEntry, names: ReadonlySet<string>): boolean {
  return topUp !== undefined && (names.has(topUp.water ?? '') || names.has(topUp.batch ?? ''));
}

/** The season of one planting. */
export function plantingSeasonOf(plan: Plan, planned: PlantingPlan): PlantingSeason {
  return remembered(planned, restsOn(plan, planned), () => workOut(plan, planned));
}

const remembered = unlessChanged<PlantingPlan, PlantingSeason>();

/** The stages of a planting, and all from which something can get into its containers. The water of a batch is part of the batch. */
function restsOn({ scope, batches }: Plan, { planting }: PlantingPlan): readonly unknown[] {
  const log = logOf(scope, planting);
  const stages = (planting.value.stages ?? []).flatMap(name => {
    const stage = gathered(scope, 'stages', name);
    return [stage, batches.get(stage?.value.batch ?? '')];
  });
  const poured = log.flatMap(({ entry: { 'top-up': topUp } }) =>
    topUp === undefined ? [] : [batches.get(topUp.batch ?? ''), gathered(scope, 'waters', topUp.water)],
  );
  return [scope.recipe.start, log, ...stages, ...poured];
}

function workOut(plan: Plan, planned: PlantingPlan): PlantingSeason {
  const { planting, fill } = planned;
  const log = logOf(plan.scope, planting);
  const stages = datedStages(plan.scope, planting, plan.batches);
  if ('kind' in stages) return keepUndated(planned, stages, log);
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
  return keepSeason(planned, kept, forecastOf(needs), log);
}

function logOf({ recipe }: Scope, { name }: Sourced<Planting>): ForecastNeeds['log'] {
  return logsByPlanting(recipe.log).get(name) ?? noLog;
}

const noLog: ForecastNeeds['log'] = keptList<ForecastNeeds['log'][number]>([]);

const keepUndated = memo(
  (plan: PlantingPlan, stages: Unknown, log: readonly Logged[]): PlantingSeason => ({
    plan,
    stages,
    forecast: stages,
    log,
  }),
);

const keepSeason = memo(
  (
    plan: PlantingPlan,
    stages: readonly DatedStage[],
    forecast: Forecast | Unknown,
    log: readonly Logged[],
  ): PlantingSeason => ({ plan, stages, forecast, log }),
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

/** The log entries about each planting. */
const logsByPlanting = memo((log: readonly (LogEntry | undefined)[]): ReadonlyMap<string, ForecastNeeds['log']> => {
  const found = new Map<string, Logged[]>();
  for (const logged of loggedIn(log)) {
    const { planting } = logged.entry;
    if (planting === undefined) continue;
    const of = found.get(planting);
    if (of === undefined) found.set(planting, [logged]);
    else of.push(logged);
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
