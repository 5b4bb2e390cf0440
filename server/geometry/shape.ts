// The shapes a container can have, and the solid of each.

import { type Box, box } from './box.ts';
import { type Cone, cone } from './cone.ts';
import { type Cylinder, cylinder } from './cylinder.ts';
import { type Profile, profile } from './profile.ts';
import type { Solid } from './solid.ts';

export type Shape = Cylinder | Box | Cone | Profile;

/** The solid of a shape that has no faults (see `vessel-faults.ts`). */
export function solidOf(shape: Shape): Solid {
  switch (shape.kind) {
    case 'cylinder':
      return cylinder(shape);
    case 'box':
      return box(shape);
    case 'cone':
      return cone(shape);
    case 'profile':
      return profile(shape);
  }
}
