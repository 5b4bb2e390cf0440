// When each batch is mixed, and how much of it: the fills and changes that it serves, the top-ups taken from it, each on its day.

import type { Day } from '../../schema/date.ts';
import { valueAt } from '../../schema/place.ts';
import type { BatchPlan } from './batch.ts';
import { assumed, type Figure, formula, given, numberOf, type Unknown } from './figure.ts';
import type { DatedStage, Forecast } from './forecast.ts';
import type { Plan, PlantingPlan } from './plan.ts';

export interface Mixing {
  readonly batch: BatchPlan;
  /** How many times its written volume the plan needs of it. */
  readonly times: Figure<'number'>;
  /** The days on which it is mixed, with how many times its volume; empty where no day is known. */
  readonly days: readonly { readonly date: Day; readonly times: number }[];
}

interface Dated {
  readonly plan: PlantingPlan;
  readonly stages: readonly DatedStage[] | Unknown;
  readonly forecast: Forecast | Unknown;
}

/** Something taken from a batch. */
interface Taken {
  readonly date: Day | undefined;
  readonly volume: Figure<'volume'>;
}

/** Every batch of the recipe; one that nothing takes from is mixed once, on no known day. */
export function mixingsOf(plan: Plan, plantings: ReadonlyMap<string, Dated>): readonly Mixing[] {
  const seasons = [...plantings.values()];
  const poured = new Map<string, Taken[]>();
  for (const season of seasons) {
    for (const { batch, ...taken } of topUpsOf(season)) poured.set(batch, [...(poured.get(batch) ?? []), taken]);
  }
  return [...plan.batches.values()].map(batch => {
    const served = batch.serves.map(({ planting, stage, total }): Taken => {
      const stages = plantings.get(planting.name)?.stages;
      const dated = stages === undefined || 'kind' in stages ? undefined : stages.find(one => one.stage === stage);
      return { date: dated?.from, volume: total };
    });
    return mixingOf(batch, [...served, ...(poured.get(batch.needs.batch.name) ?? [])]);
  });
}

function topUpsOf({ plan, forecast }: Dated): readonly (Taken & { readonly batch: string })[] {
  if ('kind' in forecast) return [];
  const { containers } = plan;
  const planned = forecast.topUps.flatMap(({ batch, date, volume_L }) => {
    if (batch === undefined) return [];
    const each = assumed(
      { dimension: 'volume', value: volume_L },
      'a top-up that the forecast expects',
      'tidemark-design',
    );
    return [{ batch, date, volume: topUpsTogether({ topUp: each, containers }) }];
  });
  const logged = forecast.needs.log.flatMap(({ index, entry }) => {
    const { batch, volume } = entry['top-up'] ?? {};
    if (batch === undefined || volume === undefined) return [];
    const each = given(volume, valueAt(['log', index, 'top-up', 'volume']));
    return [{ batch, date: entry.on, volume: topUpsTogether({ topUp: each, containers }) }];
  });
  return [...logged, ...planned];
}

function mixingOf(batch: BatchPlan, taken: readonly Taken[]): Mixing {
  const { volume } = batch;
  const times = taken.length === 0 ? once : timesMixed({ taken: taken.map(one => one.volume), volume });
  const volume_L = numberOf(volume);
  const days: { date: Day; times: number }[] = [];
  if (volume_L === undefined || times.kind === 'unknown') return { batch, times, days };
  const dated = taken.flatMap(({ date, volume: of }) => (date === undefined ? [] : [{ date, of: numberOf(of) ?? 0 }]));
  let left = 0;
  for (const { date, of } of dated.sort((a, b) => a.date - b.date)) {
    left -= of;
    if (days.length > 0 && left >= -volume_L * noise) continue;
    // The whole volume first; after that only what is short.
    const more = days.length === 0 ? Math.max(volume_L, of) : -left;
    left += more;
    days.push({ date, times: more / volume_L });
  }
  return { batch, times, days };
}

const noise = 1e-9;

const once = assumed({ dimension: 'number', value: 1 }, 'mixed once', 'tidemark-design');

/** The days on which batches are mixed. */
export function mixingDays(mixings: readonly Mixing[]): readonly { readonly batch: string; readonly date: Day }[] {
  return mixings.flatMap(({ batch, days }) => {
    const dates = [...new Set(days.map(({ date }) => date))];
    return dates.map(date => ({ batch: batch.needs.batch.name, date }));
  });
}

export const timesMixed = formula({
  id: 'times-mixed',
  says: 'how many times the batch is mixed',
  statement: 'times = what fills, changes and top-ups take ÷ volume, 1 at least',
  source: 'tidemark-design',
  takes: { taken: ['volume'], volume: 'volume' },
  gives: 'number',
  evaluate: ({ taken, volume }) => Math.max(1, taken.reduce((sum, one) => sum + one, 0) / volume),
});

export const topUpsTogether = formula({
  id: 'top-ups-of-a-planting',
  says: 'what the containers of the planting are topped up with together',
  statement: 'together = top-up × containers',
  source: 'tidemark-design',
  takes: { topUp: 'volume', containers: 'number' },
  gives: 'volume',
  evaluate: ({ topUp, containers }) => topUp * containers,
});
