// A container worked out: the vessel that its measures describe, brimful and to the net cup.

import { keyAt, type Path, type Place, valueAt } from '../../schema/place.ts';
import type { Shape } from '../geometry/shape.ts';
import { type BuiltVessel, buildVessel, type Vessel, volumeAt } from '../geometry/vessel.ts';
import type { Fault } from '../geometry/vessel-faults.ts';
import type { Container } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type Figure, formula, given, unknown, type Want } from './figure.ts';
import { memo } from './memo.ts';

export interface ContainerPlan {
  readonly container: Sourced<Container>;
  /** With one net cup. */
  readonly vessel: PlannedVessel;
  readonly brimful: Figure<'volume'>;
  readonly netCupLine: Figure<'length'>;
  readonly netCupVolume: Figure<'volume'>;
  /** What one centimetre of level holds under the net cup; under the rim where there is none. */
  readonly centimetre: Figure<'volume'>;
}

/** The vessel, or what keeps it from being one: measures that are missing, or that cannot be. */
export type PlannedVessel =
  | {
      readonly kind: 'vessel';
      readonly vessel: Vessel;
      readonly height: Figure<'length'>;
      readonly depth?: Figure<'length'>;
    }
  | { readonly kind: 'no-vessel'; readonly wants: readonly Want[]; readonly faults: readonly Fault[] };

export const planContainer = memo((container: Sourced<Container>): ContainerPlan => {
  const vessel = planVessel(container, 1);
  if (vessel.kind === 'no-vessel') {
    const none = unknown(vessel.wants);
    return { container, vessel, brimful: none, netCupLine: none, netCupVolume: none, centimetre: none };
  }
  const { height, depth } = vessel;
  const noCup = unknown([{ says: 'a net cup', at: placeIn(container, ['net-cup'], 'key') }]);
  const netCupLine = depth === undefined ? noCup : netCupLevel({ height, depth });
  return {
    container,
    vessel,
    brimful: volumeAtLevel({ level: height }, vessel.vessel),
    netCupLine,
    netCupVolume: volumeAtLevel({ level: netCupLine }, vessel.vessel),
    centimetre: centimetreUnder({ level: depth === undefined ? height : netCupLine }, vessel.vessel),
  };
});

/** The vessel of a container with a number of net cups in it. */
export const planVessel = memo((container: Sourced<Container>, netCups: number): PlannedVessel => {
  const shape = shapeOf(container);
  if ('wants' in shape) return { kind: 'no-vessel', wants: shape.wants, faults: [] };
  const cup = container.value['net-cup'];
  const wants: Want[] = [];
  const size = (key: 'depth' | 'top' | 'bottom'): number => {
    const written = cup?.[key]?.value;
    if (written === undefined) wants.push({ says: `the net cup’s ${key}`, at: placeIn(container, ['net-cup', key]) });
    return written ?? 0;
  };
  const netCup = { depth_cm: size('depth'), top_cm: size('top'), bottom_cm: size('bottom') };
  if (cup !== undefined && wants.length > 0) return { kind: 'no-vessel', wants, faults: [] };
  const built: BuiltVessel = buildVessel(cup === undefined ? { shape } : { shape, netCup, netCups });
  if (built.kind === 'faulty') {
    const faulty = built.faults.map(fault => ({ says: fault.says, at: placeIn(container, fault.at) }));
    return { kind: 'no-vessel', wants: faulty, faults: built.faults };
  }
  const height = heightOf(container, built.vessel);
  if (cup?.depth === undefined) return { kind: 'vessel', vessel: built.vessel, height };
  return {
    kind: 'vessel',
    vessel: built.vessel,
    height,
    depth: given(cup.depth, placeIn(container, ['net-cup', 'depth'])),
  };
});

function shapeOf(container: Sourced<Container>): Shape | { readonly wants: readonly Want[] } {
  const { inside } = container.value;
  const wants: Want[] = [];
  const size = (value: number | undefined, ...path: Path): number => {
    if (value === undefined)
      wants.push({ says: `the ${path[path.length - 1]}`, at: placeIn(container, ['inside', ...path]) });
    return value ?? 0;
  };
  const made = ((): Shape | undefined => {
    if (inside?.cylinder !== undefined) {
      const { diameter, height } = inside.cylinder;
      const diameter_cm = size(diameter?.value, 'cylinder', 'diameter');
      return { kind: 'cylinder', diameter_cm, height_cm: size(height?.value, 'cylinder', 'height') };
    }
    if (inside?.box !== undefined) {
      const length_cm = size(inside.box.length?.value, 'box', 'length');
      const width_cm = size(inside.box.width?.value, 'box', 'width');
      return { kind: 'box', length_cm, width_cm, height_cm: size(inside.box.height?.value, 'box', 'height') };
    }
    if (inside?.cone !== undefined) {
      const top_cm = size(inside.cone.top?.value, 'cone', 'top');
      const bottom_cm = size(inside.cone.bottom?.value, 'cone', 'bottom');
      return { kind: 'cone', top_cm, bottom_cm, height_cm: size(inside.cone.height?.value, 'cone', 'height') };
    }
    if (inside?.profile === undefined) return undefined;
    const points = inside.profile.map((point, index) => ({
      at_cm: size(point?.at?.value, 'profile', index, 'at'),
      area_cm2: size(point?.area?.value, 'profile', index, 'area'),
    }));
    return { kind: 'profile', points };
  })();
  if (made === undefined) return { wants: [{ says: 'the inner shape', at: placeIn(container, ['inside'], 'key') }] };
  return wants.length > 0 ? { wants } : made;
}

/** The inner height as the figure that is written; of a profile, its last height. */
function heightOf(container: Sourced<Container>, vessel: Vessel): Figure<'length'> {
  const { inside } = container.value;
  const shape = inside?.cylinder !== undefined ? 'cylinder' : inside?.box !== undefined ? 'box' : 'cone';
  const written = (inside?.cylinder ?? inside?.box ?? inside?.cone)?.height;
  if (written !== undefined) return given(written, placeIn(container, ['inside', shape, 'height']));
  const last = (inside?.profile?.length ?? 1) - 1;
  const at = placeIn(container, ['inside', 'profile', last, 'at']);
  return given({ dimension: 'length', value: vessel.height_cm }, at);
}

function placeIn(of: Sourced<unknown>, keys: Path, part: 'key' | 'value' = 'value'): Place {
  const path = [...of.path, ...keys];
  return part === 'key' ? keyAt(path, of.file) : valueAt(path, of.file);
}

export const netCupLevel = formula({
  id: 'net-cup-line',
  says: 'the level at which the solution touches the net cup',
  statement: 'line = height − depth',
  source: 'tidemark-design',
  takes: { height: 'length', depth: 'length' },
  gives: 'length',
  evaluate: ({ height, depth }) => height - depth,
});

export const volumeAtLevel = formula({
  id: 'volume-at-level',
  says: 'the solution in one container',
  statement: 'volume = inside up to the level − displaced by the net cup',
  source: 'solid-geometry',
  takes: { level: 'length' },
  gives: 'volume',
  evaluate: ({ level }, vessel: Vessel) => volumeAt(vessel, level),
  account: ({ level }, vessel) => {
    const inside = vessel.inside.volume_L(Math.min(level, vessel.height_cm));
    return [
      { what: 'inside up to the level', value: inside, unit: 'L' },
      { what: 'displaced by the net cup', value: inside - volumeAt(vessel, level), unit: 'L' },
    ];
  },
});

export const centimetreUnder = formula({
  id: 'centimetre-under-level',
  says: 'what one centimetre of level holds',
  statement: 'centimetre = volume up to the level − volume one centimetre lower',
  source: 'solid-geometry',
  takes: { level: 'length' },
  gives: 'volume',
  evaluate: ({ level }, vessel: Vessel) => volumeAt(vessel, level) - volumeAt(vessel, Math.max(0, level - 1)),
  account: ({ level }, vessel) => [
    { what: 'volume up to the level', value: volumeAt(vessel, level), unit: 'L' },
    { what: 'volume one centimetre lower', value: volumeAt(vessel, Math.max(0, level - 1)), unit: 'L' },
  ],
});
