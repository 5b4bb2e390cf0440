// A container with its net cups: from level to volume and back. A level is the height of the solution's surface above
// the floor; a volume is solution only, without what the cups displace.

import { type NetCup, netCup } from './net-cup.ts';
import { type Shape, solidOf } from './shape.ts';
import { cm3PerL, type Solid } from './solid.ts';
import { type Fault, vesselFaults } from './vessel-faults.ts';

export interface VesselSpec {
  readonly shape: Shape;
  readonly netCup?: NetCup;
  /** How many net cups hang in one container; 1 where left out. */
  readonly netCups?: number;
}

export interface Vessel {
  readonly inside: Solid;
  readonly height_cm: number;
  /** Solution up to the rim, with the net cups in place. */
  readonly brimful_L: number;
  /** Left out where no net cup hangs in the container. */
  readonly netCups?: HangingCups;
}

export interface HangingCups {
  readonly one: Solid;
  readonly count: number;
  /** The level at which the solution touches the bottom of the cups. */
  readonly line_cm: number;
  /** The solution below that level. */
  readonly line_L: number;
}

export type BuiltVessel =
  | { readonly kind: 'vessel'; readonly vessel: Vessel }
  | { readonly kind: 'faulty'; readonly faults: readonly [Fault, ...Fault[]] };

/** The vessel of a description, or what makes it impossible. */
export function buildVessel(spec: VesselSpec): BuiltVessel {
  const [first, ...others] = vesselFaults(spec);
  if (first !== undefined) return { kind: 'faulty', faults: [first, ...others] };
  const inside = solidOf(spec.shape);
  const { height_cm } = inside;
  const count = spec.netCups ?? 1;
  if (spec.netCup === undefined || count === 0) {
    return { kind: 'vessel', vessel: { inside, height_cm, brimful_L: inside.volume_L(height_cm) } };
  }
  const one = netCup(spec.netCup);
  const line_cm = height_cm - one.height_cm;
  const netCups = { one, count, line_cm, line_L: inside.volume_L(line_cm) };
  const brimful_L = inside.volume_L(height_cm) - count * one.volume_L(one.height_cm);
  return { kind: 'vessel', vessel: { inside, height_cm, brimful_L, netCups } };
}

/** The solution below a level, in L. Levels below the floor or above the rim count as the floor or the rim. */
export function volumeAt(vessel: Vessel, level_cm: number): number {
  const level = clamp(level_cm, vessel.height_cm);
  return vessel.inside.volume_L(level) - displacedAt(vessel, level);
}

/** What the net cups displace below a level, in L. */
export function displacedAt({ netCups, height_cm }: Vessel, level_cm: number): number {
  if (netCups === undefined) return 0;
  const wet_cm = clamp(level_cm, height_cm) - netCups.line_cm;
  return wet_cm <= 0 ? 0 : netCups.count * netCups.one.volume_L(Math.min(wet_cm, netCups.one.height_cm));
}

/** The area of the solution's surface at a level, between the net cups, in cm². */
export function surfaceAt({ inside, netCups, height_cm }: Vessel, level_cm: number): number {
  const level = clamp(level_cm, height_cm);
  const whole = inside.area_cm2(level);
  if (netCups === undefined || level <= netCups.line_cm) return whole;
  const wet_cm = Math.min(level - netCups.line_cm, netCups.one.height_cm);
  return Math.max(0, whole - netCups.count * netCups.one.area_cm2(wet_cm));
}

/**
 * The level at which a volume of solution stands, in cm; the rim for more than brimful. Newton's steps inside a bracket
 * that halves when they leave it, until neighbouring numbers are reached.
 */
export function levelAt(vessel: Vessel, volume_L: number): number {
  if (volume_L <= 0) return 0;
  if (vessel.brimful_L <= volume_L) return vessel.height_cm;
  let [low, high] = [0, vessel.height_cm];
  let level = (vessel.height_cm * volume_L) / vessel.brimful_L;
  for (let step = 0; step < mostSteps; step++) {
    const excess = volumeAt(vessel, level) - volume_L;
    if (excess === 0) return level;
    if (excess < 0) low = level;
    else high = level;
    const newton = level - (excess * cm3PerL) / surfaceAt(vessel, level);
    const next = low < newton && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - level) <= Number.EPSILON * level) return next;
    level = next;
  }
  return level;
}

/** Halving alone needs 60 steps for a double's precision; Newton's steps rarely need ten. */
const mostSteps = 200;

function clamp(level_cm: number, height_cm: number): number {
  return Math.min(Math.max(level_cm, 0), height_cm);
}
