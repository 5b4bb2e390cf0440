// The fill of a planting: how high each container is filled at the start, and how much that takes.

import { valueAt } from '../../schema/place.ts';
import type { Container, Planting } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { netCupLevel, type PlannedVessel, planVessel, volumeAtLevel } from './container.ts';
import { assumed, type Figure, formula, given, unknown } from './figure.ts';
import { memo } from './memo.ts';
import { unreadIn } from './unread.ts';
import { usualAirGap_cm } from './uptake.ts';

export interface FillPlan {
  readonly vessel: PlannedVessel | undefined;
  readonly level: Figure<'length'>;
  /** In one container. */
  readonly volume: Figure<'volume'>;
  readonly netCupLine: Figure<'length'>;
  /** The level to which a container is refilled when a later stage brings another batch: air roots keep their gap. */
  readonly changeLevel: Figure<'length'>;
  readonly changeVolume: Figure<'volume'>;
}

export const planFill = memo((planting: Sourced<Planting>, container: Sourced<Container> | undefined): FillPlan => {
  if (container === undefined)
    return unknownFill(unknown([{ says: 'the container', at: valueAt([...planting.path, 'container']) }]));
  const planned = planVessel(container, planting.value.plants ?? 1);
  if (planned.kind === 'no-vessel') return { ...unknownFill(unknown(planned.wants)), vessel: planned };
  const { vessel, height, depth } = planned;
  const at = valueAt([...planting.path, 'fill'], planting.file);
  const noCup = unknown([{ says: 'a net cup', at: valueAt([...container.path, 'net-cup'], container.file) }]);
  const netCupLine = depth === undefined ? noCup : netCupLevel({ height, depth });
  const fill = planting.value.fill ?? { kind: 'to-net-cup' };
  const unread = unreadIn(planting.value, ['fill', 'plants'], planting.path, planting.file);
  const level =
    unread.length > 0
      ? unknown(unread)
      : fill.kind === 'level'
        ? given(fill.level, at)
        : fill.kind === 'to-net-cup'
          ? netCupLine
          : intoNetCup({ line: netCupLine, depth: given(fill.depth, at) });
  const gap = airGapOf(planting);
  // Without a net cup, roots are left behind by the level of the fill.
  const changeLevel = belowNetCup({ line: depth === undefined ? level : netCupLine, gap });
  return {
    vessel: planned,
    level,
    volume: volumeAtLevel({ level }, vessel),
    netCupLine,
    changeLevel,
    changeVolume: volumeAtLevel({ level: changeLevel }, vessel),
  };
});

/** The air that is kept once roots hang; what young plants are given where none is written. */
export function airGapOf(planting: Sourced<Planting>): Figure<'length'> {
  const { path, file, value } = planting;
  const unread = unreadIn(value, ['keep-air-gap'], path, file);
  if (unread.length > 0) return unknown(unread);
  const gap = value['keep-air-gap'];
  return gap === undefined
    ? assumed({ dimension: 'length', value: usualAirGap_cm }, 'the air gap of young plants', 'ifas-without-soil')
    : given(gap, valueAt([...path, 'keep-air-gap'], file));
}

function unknownFill(none: Figure<never>): FillPlan {
  return { vessel: undefined, level: none, volume: none, netCupLine: none, changeLevel: none, changeVolume: none };
}

export const intoNetCup = formula({
  id: 'into-net-cup',
  says: 'the fill level',
  statement: 'level = line + depth',
  source: 'kratky-2010',
  takes: { line: 'length', depth: 'length' },
  gives: 'length',
  evaluate: ({ line, depth }) => line + depth,
});

export const belowNetCup = formula({
  id: 'below-net-cup',
  says: 'the highest level that keeps the air gap',
  statement: 'level = line − gap',
  source: 'kratky-2011',
  takes: { line: 'length', gap: 'length' },
  gives: 'length',
  evaluate: ({ line, gap }) => Math.max(0, line - gap),
});
