// One short line about each named entry: beside its name in the outline, in completion and at the top of its hover.

import { formatDate } from '../../schema/date.ts';
import { unitOf } from '../../schema/find-unit.ts';
import { plainNumber } from '../../schema/number.ts';
import type { SectionName } from '../../schema/section-names.ts';
import { acidKeys, baseKeys } from '../../schema/sections/adjuster.ts';
import { gathered } from '../plan/gather.ts';
import type { LogEntry, SectionEntries } from '../recipe/seen.ts';
import { amountIn, amountText, type Reader, rangeText } from '../words/amount.ts';
import { figureText } from '../words/figure.ts';
import { scaleText } from '../words/measured.ts';
import type { Snapshot } from '../workspace/snapshot.ts';

/** What an entry comes to, in a few words; empty where nothing is known of it. */
export function detailOf(snapshot: Snapshot, section: SectionName, name: string): string {
  const found = gathered(snapshot.plan.scope, section, name);
  if (found === undefined) return '';
  return details[section](found.value as never, snapshot, name)
    .filter(part => part !== '')
    .join(', ');
}

/** What a log entry records: `berry: pH 6.2, EC 1.3 mS/cm`. */
export function logDetail(entry: LogEntry, reader: Reader): string {
  const about = entry.planting ?? entry.batch;
  const topUp = entry['top-up'];
  const said = [
    ...(entry.pH === undefined ? [] : [`pH ${plainNumber(entry.pH)}`]),
    ...(entry.EC === undefined ? [] : [`EC ${amountText(entry.EC, reader)}`]),
    ...(entry.level === undefined ? [] : [`level ${amountText(entry.level, reader)}`]),
    ...(topUp?.volume === undefined ? [] : [`top-up ${amountText(topUp.volume, reader)}`]),
    ...(entry.note === undefined ? [] : [entry.note]),
  ].join(', ');
  return about === undefined ? said : `${about}${said === '' ? '' : `: ${said}`}`;
}

/** The name under which a log entry stands in lists. */
export function logName(entry: LogEntry | undefined, index: number): string {
  return entry?.on === undefined ? `no. ${index + 1}` : formatDate(entry.on);
}

type Detail<S extends SectionName> = (value: SectionEntries[S], snapshot: Snapshot, name: string) => readonly string[];

const details: { readonly [S in SectionName]: Detail<S> } = {
  waters: ({ pH, alkalinity, EC, temperature }, { recipe }) => [
    pH === undefined ? '' : `pH ${plainNumber(pH)}`,
    alkalinity === undefined ? '' : `alkalinity ${amountIn(alkalinity, unitOf('mg/L CaCO3'))}`,
    EC === undefined ? '' : `EC ${amountText(EC, recipe.show)}`,
    temperature === undefined ? '' : amountText(temperature, recipe.show),
  ],
  feeds: ({ label, formula }, { recipe }) => [
    formula ?? '',
    label === undefined ? '' : `${amountText(label, recipe.show)} by its label`,
  ],
  adjusters: ({ acid, base, response }, { recipe }) => [
    ...acidKeys.flatMap(key => {
      const share = acid?.[key];
      return share === undefined ? [] : [`${key} acid ${amountText(share, recipe.show)}`];
    }),
    ...baseKeys.flatMap(key => {
      const share = base?.[key];
      return share === undefined ? [] : [`${key} ${amountText(share, recipe.show)}`];
    }),
    response === undefined ? '' : `${plainNumber(response.pH)} pH at ${amountText(response.at, recipe.show)}`,
  ],
  tools: ({ smallest, largest, steps, holds }, { recipe }) => [
    smallest === undefined ? '' : `steps of ${scaleText(smallest, recipe.show, smallest.value)}`,
    largest === undefined ? '' : `up to ${scaleText(largest, recipe.show, smallest?.value)}`,
    steps === undefined
      ? ''
      : steps.flatMap(size => (size === undefined ? [] : [scaleText(size, recipe.show)])).join(', '),
    holds === undefined ? '' : `holds ${amountText(holds, recipe.show)}`,
  ],
  containers: (_, { plan, recipe }, name) => {
    const container = plan.containers.get(name);
    if (container === undefined || container.brimful.kind === 'unknown') return [];
    const toCup = container.netCupVolume.kind === 'known';
    return [
      `${figureText(container.brimful, recipe.show)} brimful`,
      toCup ? `${figureText(container.netCupVolume, recipe.show)} to the net cup` : '',
    ];
  },
  targets: ({ pH, EC }, { recipe }) => [
    pH === undefined ? '' : `pH ${rangeText(pH, recipe.show)}`,
    EC === undefined ? '' : `EC ${rangeText(EC, recipe.show)}`,
  ],
  stages: ({ lasts, batch }, { recipe }) => [
    lasts === undefined ? '' : amountText(lasts, recipe.show),
    batch === undefined ? '' : `fed by ${batch}`,
  ],
  plantings: ({ crop }, { plan, recipe }, name) => {
    const planting = plan.plantings.get(name);
    if (planting === undefined || planting.fill.volume.kind === 'unknown') return [crop ?? ''];
    const fill = figureText(planting.fill.volume, recipe.show);
    const many = planting.containers.kind === 'known' && planting.containers.quantity.value !== 1;
    return [crop ?? '', many ? `${figureText(planting.containers, recipe.show)} × ${fill}` : fill];
  },
  batches: (_, { plan, recipe }, name) => {
    const batch = plan.batches.get(name);
    if (batch === undefined) return [];
    return [
      batch.volume.kind === 'known' ? figureText(batch.volume, recipe.show) : '',
      ...[...batch.doses.values()].flatMap(dose =>
        dose.exact.kind === 'known' ? [`${figureText(dose.exact, recipe.show)} ${dose.name}`] : [],
      ),
    ];
  },
};
