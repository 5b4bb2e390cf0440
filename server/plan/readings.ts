// The last readings of each planting and batch in the log, and the step that brings pH or EC back into the band: an estimate, for what
// the container holds is known only by the forecast.

import { valueAt } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import type { Range } from '../../schema/range.ts';
import { volumeAt } from '../geometry/vessel.ts';
import type { Recipe } from '../recipe/recipe.ts';
import type { Adjuster, LogEntry, Target } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { finalOf } from './adjust.ts';
import { adjustByComposition, adjustByResponse, firstStep } from './adjust-formulas.ts';
import type { BatchPlan } from './batch.ts';
import { dayFigures } from './day-figures.ts';
import type { DoseFigure } from './dose.ts';
import { type Figure, given, numberOf } from './figure.ts';
import type { Forecast } from './forecast.ts';
import type { ForecastDay } from './forecast-day.ts';
import { asIfMeasured } from './learn.ts';
import { measuredOnce } from './loads.ts';
import { type Logged, loggedIn } from './logged.ts';
import { memo } from './memo.ts';
import type { Plan } from './plan.ts';
import { reagentOf } from './reagent.ts';
import { isForecast, type PlantingSeason } from './season.ts';
import { stateOf } from './state.ts';
import { writtenStrength } from './strength.ts';
import { mixedEC, volumeToAim } from './top-up.ts';

/** A logged reading with what it is held against. */
export interface LoggedReading {
  readonly index: number;
  readonly entry: LogEntry;
  /** The planting, or the batch where the entry is about one. */
  readonly about: string;
  readonly target: Sourced<Target>;
  readonly batch: BatchPlan | undefined;
  /** Of the planting, where there is one. */
  readonly day: { readonly forecast: Forecast; readonly is: ForecastDay } | undefined;
}

/** The last reading of pH, or of EC, of each batch that the log measures by itself and that has a target. */
export function lastOfBatches({ scope, batches }: Plan, of: 'pH' | 'EC'): readonly LoggedReading[] {
  const last = new Map<string, Logged>();
  // The log is read from top to bottom; an entry out of order is another finding.
  for (const logged of ofBatchesAlone(scope.recipe.log)) {
    if (isReading(logged, of)) last.set(logged.entry.batch ?? '', logged);
  }
  return [...last].flatMap(([about, { index, entry }]) => {
    const batch = batches.get(about);
    const target = batch?.needs.target;
    return target === undefined ? [] : [{ index, entry, about, target, batch, day: undefined }];
  });
}

const ofBatchesAlone = memo((log: Recipe['log']): readonly Logged[] =>
  loggedIn(log).filter(({ entry }) => entry.planting === undefined),
);

/** The last reading of pH, or of EC, of a planting; none where no stage with a target stands on that day. */
export function lastOfPlanting(season: PlantingSeason, targets: Targets, of: 'pH' | 'EC'): readonly LoggedReading[] {
  const { plan, stages, forecast, log } = season;
  const last = log.findLast(logged => isReading(logged, of));
  if ('kind' in stages || last === undefined) return [];
  const { index, entry } = last;
  const at = stages.findIndex(({ from, to }) => entry.on !== undefined && from <= entry.on && entry.on < to);
  const dated = stages[at];
  if (dated === undefined) return [];
  const batch = stages.slice(0, at + 1).findLast(stage => stage.batch !== undefined)?.batch;
  const target = targets.get(dated.stage.value.target ?? '') ?? batch?.needs.target;
  if (target === undefined) return [];
  const day = isForecast(forecast) ? forecast.days.find(({ date }) => date === entry.on) : undefined;
  const known = day === undefined || !isForecast(forecast) ? undefined : { forecast, is: day };
  return [{ index, entry, about: plan.planting.name, target, batch, day: known }];
}

export type Targets = ReadonlyMap<string, Sourced<Target>>;

function isReading({ entry }: Logged, of: 'pH' | 'EC'): boolean {
  return entry.on !== undefined && entry[of] !== undefined;
}

/** A cautious first addition to each container, or to the batch. */
export interface PHStep {
  readonly adjuster: string;
  readonly amount: Quantity<'volume'> | Quantity<'mass'>;
}

/** Undefined where the batch names no adjuster that leads back into the band, or its amount cannot be computed. */
export function pHStepOf(reading: LoggedReading): PHStep | undefined {
  const { batch, entry, index, target } = reading;
  const adjuster = batch?.needs.adjuster;
  const volume = volumeOf(reading);
  const band = target.value.pH;
  if (batch === undefined || adjuster === undefined || entry.pH === undefined || band === undefined) return undefined;
  const from = given({ dimension: 'pH', value: entry.pH }, valueAt(['log', index, 'pH']));
  const value = target.value['pH-aim'] ?? (band.low + band.high) / 2;
  const to = given({ dimension: 'pH', value }, valueAt([...target.path, 'pH'], target.file));
  const amount = amountOf(batch, adjuster, entry.pH, { from, to, volume });
  const step = firstStep(amount, measuredOnce, batch.needs.tools);
  if (step.kind === 'unknown' || step.quantity.value <= 0) return undefined;
  return { adjuster: adjuster.name, amount: step.quantity };
}

interface Adjusting {
  readonly from: Figure<'pH'>;
  readonly to: Figure<'pH'>;
  readonly volume: Figure<'volume'>;
}

/** As if the container held the batch as it was mixed, at the pH that was measured. */
function amountOf(batch: BatchPlan, adjuster: Sourced<Adjuster>, pH: number, figures: Adjusting): DoseFigure {
  const reagent = reagentOf(adjuster);
  if (reagent.kind === 'unknown') return reagent;
  if (reagent.kind === 'response') return adjustByResponse[reagent.unit](figures, { pHPerUnit: reagent.pHPerUnit });
  const { question, wants } = stateOf(batch);
  if (question === undefined) return { kind: 'unknown', wants };
  const { unit, perUnit, does } = reagent;
  const titration = { question: asIfMeasured(question, pH), perUnit, does, name: adjuster.name };
  return adjustByComposition[unit]({ ...figures, ...writtenStrength(adjuster) }, titration);
}

function volumeOf({ day, batch }: LoggedReading): Figure<'volume'> {
  if (day !== undefined) return dayFigures(day.forecast, day.is).volume;
  return batch?.volume ?? { kind: 'unknown', wants: [] };
}

/** What brings an EC back: something poured into each container, or the solution changed where there is no room for it. */
export type ECStep =
  | {
      readonly kind: 'pour';
      readonly name: string;
      readonly volume: Quantity<'volume'>;
      readonly after: Quantity<'conductivity'>;
    }
  | { readonly kind: 'change'; readonly batch: string };

/** Undefined for a batch, and where what could be poured, or its EC, is not known. */
export function ecStepOf({ entry, day, batch, target }: LoggedReading): ECStep | undefined {
  const band: Range<'conductivity'> | undefined = target.value.EC;
  const EC = entry.EC?.value;
  if (day === undefined || batch === undefined || band === undefined || EC === undefined) return undefined;
  const { forecast, is } = day;
  const aim = (band.low + band.high) / 2;
  const isHigh = band.high < EC;
  const water = batch.needs.water;
  const name = isHigh ? water?.name : batch.needs.batch.name;
  const added = isHigh ? forecast.needs.waterEC.get(water?.name ?? '') : numberOf(finalOf(batch).figures.EC);
  if (name === undefined || added === undefined) return undefined;
  const most = is.rootsHang
    ? (numberOf(forecast.needs.fill.changeVolume) ?? 0)
    : volumeAt(forecast.vessel, forecast.vessel.height_cm);
  const room = most - is.volume_L;
  const wanted = volumeToAim(EC, is.volume_L, added, aim) ?? room;
  const value = Math.min(wanted, room);
  if (value <= 0) return { kind: 'change', batch: batch.needs.batch.name };
  const after = mixedEC(EC, is.volume_L, added, value);
  // What does not get there, or leads away, is no help.
  if (after < band.low || band.high < after) return { kind: 'change', batch: batch.needs.batch.name };
  return {
    kind: 'pour',
    name,
    volume: { dimension: 'volume', value },
    after: { dimension: 'conductivity', value: after },
  };
}
