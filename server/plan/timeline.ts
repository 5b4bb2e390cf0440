// What is to be done on which day: sow, thin, mix, fill, transplant, check, top up, change, harvest.

import { addDays, type Day } from '../../schema/date.ts';
import type { Quantity } from '../../schema/quantity.ts';
import { cropNamed, cropRow } from './crops.ts';
import { numberOf, type Unknown } from './figure.ts';
import type { DatedStage, Forecast } from './forecast.ts';
import { memo } from './memo.ts';
import type { PlantingPlan } from './plan.ts';

/** Something to do on a day. */
export interface Task {
  readonly date: Day;
  /** The last day for it, where it may wait: a harvest has a window. */
  readonly until?: Day;
  readonly kind: TaskKind;
  readonly what: string;
  /** The name of the planting, or of the batch that is mixed. */
  readonly about: string;
  /** How much goes into each container. */
  readonly perContainer?: Quantity<'volume'>;
}

/** In the order in which they are done on one day. */
export const taskKinds = ['sow', 'thin', 'mix', 'check', 'fill', 'transplant', 'change', 'top-up', 'harvest'] as const;
export type TaskKind = (typeof taskKinds)[number];

/** Days from sowing to thinning, between checks, and in which a crop may wait for its harvest (common practice). */
const daysToThin = 10;
const daysBetweenChecks = 7;
const daysOfHarvest = 7;

interface Dated {
  readonly plan: PlantingPlan;
  readonly stages: readonly DatedStage[] | Unknown;
  readonly forecast: Forecast | Unknown;
}

/** When a batch is mixed. */
export interface MixingDay {
  readonly batch: string;
  readonly date: Day;
}

/** The tasks of all plantings and batches, by day, then in the order of work, then as plantings are written. */
export function tasksOf(seasons: readonly Dated[], mixings: readonly MixingDay[]): readonly Task[] {
  const mixes = mixings.map(({ batch, date }, index): Task => {
    const more = mixings.findIndex(other => other.batch === batch) < index;
    return { date, kind: 'mix', what: more ? `mix more of ${batch}` : `mix ${batch}`, about: batch };
  });
  const tasks = [...mixes, ...seasons.flatMap(tasksOfPlanting)];
  return tasks.sort((a, b) => a.date - b.date || taskKinds.indexOf(a.kind) - taskKinds.indexOf(b.kind));
}

const tasksOfPlanting = memo((season: Dated): readonly Task[] => {
  const { planting, fill } = season.plan;
  const about = planting.name;
  const { sow } = planting.value;
  const stages = 'kind' in season.stages ? [] : season.stages;
  const forecast = 'kind' in season.forecast ? undefined : season.forecast;
  const [first] = stages;
  const last = stages[stages.length - 1];
  const tasks: Task[] = [];
  if (sow !== undefined) {
    tasks.push({ date: sow, kind: 'sow', what: `sow ${about}`, about });
    const thin = addDays(sow, daysToThin);
    if (first === undefined || thin < first.from) {
      tasks.push({ date: thin, kind: 'thin', what: `thin ${about} to one seedling in each plug`, about });
    }
  }
  if (first === undefined || last === undefined) return tasks;
  const opening = first.batch?.needs.batch.name;
  const filling = `fill the containers of ${about}${opening === undefined ? '' : ` with ${opening}`}`;
  tasks.push({ date: first.from, kind: 'fill', what: filling, about, ...amount(numberOf(fill.volume)) });
  const planted = `set the plugs of ${about} over the solution; a plug is ready when its first root shows`;
  tasks.push({ date: first.from, kind: 'transplant', what: planted, about });
  let before = first.batch;
  for (const { stage, from, batch } of stages.slice(1)) {
    if (batch === undefined || batch === before) continue;
    const why = before === undefined ? '' : ` as ${stage.name} begins`;
    const what = `change ${about} to ${batch.needs.batch.name}${why}; leave the air roots in air`;
    tasks.push({ date: from, kind: 'change', what, about, ...amount(numberOf(fill.changeVolume)) });
    before = batch;
  }
  for (const topUp of forecast?.topUps ?? []) {
    const what = `top up ${about} with ${topUp.water ?? topUp.batch ?? 'solution'}`;
    tasks.push({ date: topUp.date, kind: 'top-up', what, about, ...amount(topUp.volume_L) });
  }
  for (let date = addDays(first.from, daysBetweenChecks); date < last.to; date = addDays(date, daysBetweenChecks)) {
    tasks.push({ date, kind: 'check', what: `measure pH, EC and level of ${about}`, about });
  }
  const [date, until] = harvestOf(season.plan, last.to);
  tasks.push({ date, until, kind: 'harvest', what: `harvest ${about}`, about });
  return tasks;
});

function amount(volume_L: number | undefined): Pick<Task, 'perContainer'> {
  return volume_L === undefined ? {} : { perContainer: { dimension: 'volume', value: volume_L } };
}

/** The window of the harvest: as published from sowing, where it is and falls about the end of the plan; else a week from there. */
function harvestOf({ planting }: PlantingPlan, end: Day): readonly [Day, Day] {
  const { sow, crop } = planting.value;
  const key = cropNamed(crop);
  const published = key === undefined ? undefined : cropRow(key).harvest_d;
  if (sow !== undefined && published !== undefined) {
    const [from, to] = [addDays(sow, published[0]), addDays(sow, published[1])];
    if (from <= end && end <= to) return [from, to];
  }
  return [end, addDays(end, daysOfHarvest)];
}
