// The forms that a few components can take together, out of the whole network: arrays without gaps, so that the solver touches
// nothing that is not there. Worked out once for each set of components; the same few sets come again and again.

import { cations, ligands, type Member, members } from './network.ts';
import type { Component } from './tables/species.ts';

/** The place that stands for no component: one of it is always free, so that every form is a product of two. */
export const nothing = 0;

export interface Forms {
  readonly members: readonly Member[];
  /** As many places for numbers as there are forms. */
  readonly notYet: readonly number[];
  /** The components by place, cations first; none at place 0. */
  readonly components: readonly (Component | undefined)[];
  /** Ligands stand from this place on. */
  readonly firstLigand: number;
  /** Place of carbonate; `nothing` where it is not there. */
  readonly carbonate: number;
  // Of each form, in the order of `members`:
  /** Its place in the network. */
  readonly inNetwork: Int16Array;
  readonly cation: Int8Array;
  readonly ligand: Int8Array;
  /** The component that its protons count for: its ligand where it has one. */
  readonly holder: Int8Array;
  readonly charge: Int8Array;
  readonly protons: Int8Array;
  /** Equivalents a mole. */
  readonly alkalinity: Int8Array;
  /** Where its factor is added up: with those of its only component, or, from the number of components on, of its pair. */
  readonly sum: Int8Array;
  /** Where its powers stand among those from the lowest on. */
  readonly protonPlace: Int8Array;
  readonly gammaPlace: Int8Array;
  readonly neutralPlace: Int8Array;
  // Of each two components that pair:
  readonly pairCation: Int8Array;
  readonly pairLigand: Int8Array;
}

/** The whole powers that forms are multiplied by: of the proton's activity, and of gamma of charge one and of the uncharged. */
export const powers = {
  proton: spanOf(members.map(member => member.protons)),
  gamma: spanOf(members.map(member => member.gammaPower)),
  neutral: spanOf(members.map(member => member.neutralPower)),
} as const;

function spanOf(all: readonly number[]) {
  const lowest = Math.min(0, ...all);
  return { lowest, count: Math.max(0, ...all) - lowest + 1 };
}

/** The forms of all components that are present. */
export function formsOf(isPresent: (component: Component) => boolean): Forms {
  let set = 0;
  for (const [bit, component] of binding.entries()) if (isPresent(component)) set |= 1 << bit;
  const known = formsBySet.get(set);
  if (known !== undefined) return known;
  const made = makeForms(binding.filter((_, bit) => (set & (1 << bit)) !== 0));
  formsBySet.set(set, made);
  return made;
}

const binding: readonly Component[] = [...cations, ...ligands];
const formsBySet = new Map<number, Forms>();

function makeForms(present: readonly Component[]): Forms {
  const components = [undefined, ...present];
  const placeOf = (component: Component | undefined): number => components.indexOf(component);
  const isThere = (component: Component | undefined): boolean => component === undefined || placeOf(component) > 0;
  const found = members.filter(({ cation, ligand }) => isThere(cations[cation]) && isThere(ligands[ligand]));
  const cation = Int8Array.from(found, member => placeOf(cations[member.cation]));
  const ligand = Int8Array.from(found, member => placeOf(ligands[member.ligand]));
  const pairs = [...new Set(found.flatMap((_, i) => (isPair(i) ? [pairOf(i)] : [])))];
  return {
    members: found,
    notYet: found.map(() => Number.NaN),
    components,
    firstLigand: 1 + present.filter(component => cations.includes(component)).length,
    carbonate: Math.max(nothing, placeOf('CO3')),
    inNetwork: Int16Array.from(found, member => members.indexOf(member)),
    cation,
    ligand,
    holder: ligand.map((place, i) => (place === nothing ? (cation[i] ?? nothing) : place)),
    charge: Int8Array.from(found, member => member.charge),
    protons: Int8Array.from(found, member => member.protons),
    alkalinity: Int8Array.from(found, member => member.alkalinity),
    protonPlace: Int8Array.from(found, member => member.protons - powers.proton.lowest),
    gammaPlace: Int8Array.from(found, member => member.gammaPower - powers.gamma.lowest),
    neutralPlace: Int8Array.from(found, member => member.neutralPower - powers.neutral.lowest),
    sum: Int8Array.from(found, (_, i) =>
      isPair(i) ? components.length + pairs.indexOf(pairOf(i)) : Math.max(cation[i] ?? nothing, ligand[i] ?? nothing),
    ),
    pairCation: Int8Array.from(pairs, pair => pair % components.length),
    pairLigand: Int8Array.from(pairs, pair => Math.floor(pair / components.length)),
  };

  function isPair(i: number): boolean {
    return cation[i] !== nothing && ligand[i] !== nothing;
  }

  function pairOf(i: number): number {
    return (cation[i] ?? nothing) + components.length * (ligand[i] ?? nothing);
  }
}
