// What every shape answers, whatever its name: how wide it is at a height and how much fits below it.

/**
 * The inside of a container, or the outside of a net cup, standing on its own floor. Heights are in cm from that floor
 * and are taken to lie between 0 and `height_cm`.
 */
export interface Solid {
  readonly height_cm: number;
  /** The area of the level surface at a height. */
  readonly area_cm2: (at_cm: number) => number;
  /** The volume from the floor up to a height. */
  readonly volume_L: (to_cm: number) => number;
  /** Heights between which the area is one polynomial of second degree at most: floor and rim, and any corner between. */
  readonly corners_cm: readonly number[];
}

export const cm3PerL = 1000;

/** The area of a circle. */
export function circle_cm2(diameter_cm: number): number {
  return (Math.PI * diameter_cm * diameter_cm) / 4;
}
