// What can be dissolved: the components a solution is counted in, and every form they take. Separate because formulas,
// solver, saturation and conductivity all name species by these keys.

import type { ElementCounts } from './elements.ts';

interface ComponentRow {
  readonly title: string;
  /** Charge of the form in which the component is counted (CO3 as carbonate ion, B as boric acid). */
  readonly charge: number;
  /** Atoms of that form. */
  readonly elements: ElementCounts;
  /** A cation pairs with ligands; an inert component takes part in the charge balance and the ionic strength only. */
  readonly role: 'cation' | 'ligand' | 'inert';
  /** The form itself, as a species. */
  readonly species: string;
  /** Protons its counted form takes up on the way to the form that has no alkalinity (at about pH 4.5). */
  readonly alkalinity: number;
}

/** The components of a solution. Totals are given per component, mol per kg of water (close to mol/L). */
export const components = {
  Ca: { title: 'calcium', charge: 2, elements: { Ca: 1 }, role: 'cation', species: 'Ca+2', alkalinity: 0 },
  Mg: { title: 'magnesium', charge: 2, elements: { Mg: 1 }, role: 'cation', species: 'Mg+2', alkalinity: 0 },
  K: { title: 'potassium', charge: 1, elements: { K: 1 }, role: 'cation', species: 'K+', alkalinity: 0 },
  Na: { title: 'sodium', charge: 1, elements: { Na: 1 }, role: 'cation', species: 'Na+', alkalinity: 0 },
  NH4: { title: 'ammonium', charge: 1, elements: { N: 1, H: 4 }, role: 'cation', species: 'NH4+', alkalinity: 0 },
  CO3: { title: 'carbonate', charge: -2, elements: { C: 1, O: 3 }, role: 'ligand', species: 'CO3-2', alkalinity: 2 },
  PO4: { title: 'phosphate', charge: -3, elements: { P: 1, O: 4 }, role: 'ligand', species: 'PO4-3', alkalinity: 2 },
  SO4: { title: 'sulfate', charge: -2, elements: { S: 1, O: 4 }, role: 'ligand', species: 'SO4-2', alkalinity: 0 },
  B: { title: 'boron', charge: 0, elements: { B: 1, O: 3, H: 3 }, role: 'ligand', species: 'B(OH)3', alkalinity: 0 },
  Si: { title: 'silica', charge: 0, elements: { Si: 1, O: 4, H: 4 }, role: 'ligand', species: 'H4SiO4', alkalinity: 0 },
  citrate: {
    title: 'citrate',
    charge: -3,
    elements: { C: 6, H: 5, O: 7 },
    role: 'ligand',
    species: 'Cit-3',
    alkalinity: 2,
  },
  acetate: {
    title: 'acetate',
    charge: -1,
    elements: { C: 2, H: 3, O: 2 },
    role: 'ligand',
    species: 'Ac-',
    alkalinity: 1,
  },
  phthalate: {
    title: 'phthalate',
    charge: -2,
    elements: { C: 8, H: 4, O: 4 },
    role: 'ligand',
    species: 'Pht-2',
    alkalinity: 1,
  },
  Cl: { title: 'chloride', charge: -1, elements: { Cl: 1 }, role: 'inert', species: 'Cl-', alkalinity: 0 },
  NO3: { title: 'nitrate', charge: -1, elements: { N: 1, O: 3 }, role: 'inert', species: 'NO3-', alkalinity: 0 },
  urea: {
    title: 'urea',
    charge: 0,
    elements: { C: 1, H: 4, N: 2, O: 1 },
    role: 'inert',
    species: 'CO(NH2)2',
    alkalinity: 0,
  },
} as const satisfies Record<string, ComponentRow>;

export type Component = keyof typeof components;

export const componentKeys = Object.keys(components).filter(isComponent);

export function isComponent(key: string): key is Component {
  return Object.hasOwn(components, key);
}

interface SpeciesRow {
  readonly charge: number;
  /** How it is written for people. */
  readonly formula: string;
}

/** Every dissolved form the solver counts, by key. */
export const species = {
  'H+': { charge: 1, formula: 'H⁺' },
  'OH-': { charge: -1, formula: 'OH⁻' },
  'Ca+2': { charge: 2, formula: 'Ca²⁺' },
  'Mg+2': { charge: 2, formula: 'Mg²⁺' },
  'K+': { charge: 1, formula: 'K⁺' },
  'Na+': { charge: 1, formula: 'Na⁺' },
  'NH4+': { charge: 1, formula: 'NH₄⁺' },
  NH3: { charge: 0, formula: 'NH₃' },
  'Cl-': { charge: -1, formula: 'Cl⁻' },
  'NO3-': { charge: -1, formula: 'NO₃⁻' },
  'CO(NH2)2': { charge: 0, formula: 'CO(NH₂)₂' },
  CO2: { charge: 0, formula: 'CO₂' },
  'HCO3-': { charge: -1, formula: 'HCO₃⁻' },
  'CO3-2': { charge: -2, formula: 'CO₃²⁻' },
  H3PO4: { charge: 0, formula: 'H₃PO₄' },
  'H2PO4-': { charge: -1, formula: 'H₂PO₄⁻' },
  'HPO4-2': { charge: -2, formula: 'HPO₄²⁻' },
  'PO4-3': { charge: -3, formula: 'PO₄³⁻' },
  'HSO4-': { charge: -1, formula: 'HSO₄⁻' },
  'SO4-2': { charge: -2, formula: 'SO₄²⁻' },
  'B(OH)3': { charge: 0, formula: 'B(OH)₃' },
  'B(OH)4-': { charge: -1, formula: 'B(OH)₄⁻' },
  H4SiO4: { charge: 0, formula: 'H₄SiO₄' },
  'H3SiO4-': { charge: -1, formula: 'H₃SiO₄⁻' },
  'H2SiO4-2': { charge: -2, formula: 'H₂SiO₄²⁻' },
  H3Cit: { charge: 0, formula: 'H₃Cit' },
  'H2Cit-': { charge: -1, formula: 'H₂Cit⁻' },
  'HCit-2': { charge: -2, formula: 'HCit²⁻' },
  'Cit-3': { charge: -3, formula: 'Cit³⁻' },
  HAc: { charge: 0, formula: 'HAc' },
  'Ac-': { charge: -1, formula: 'Ac⁻' },
  H2Pht: { charge: 0, formula: 'H₂Pht' },
  'HPht-': { charge: -1, formula: 'HPht⁻' },
  'Pht-2': { charge: -2, formula: 'Pht²⁻' },
  'CaOH+': { charge: 1, formula: 'CaOH⁺' },
  CaCO3: { charge: 0, formula: 'CaCO₃' },
  'CaHCO3+': { charge: 1, formula: 'CaHCO₃⁺' },
  CaSO4: { charge: 0, formula: 'CaSO₄' },
  'CaHSO4+': { charge: 1, formula: 'CaHSO₄⁺' },
  'CaPO4-': { charge: -1, formula: 'CaPO₄⁻' },
  CaHPO4: { charge: 0, formula: 'CaHPO₄' },
  'CaH2PO4+': { charge: 1, formula: 'CaH₂PO₄⁺' },
  'CaCit-': { charge: -1, formula: 'CaCit⁻' },
  CaHCit: { charge: 0, formula: 'CaHCit' },
  'CaAc+': { charge: 1, formula: 'CaAc⁺' },
  'MgOH+': { charge: 1, formula: 'MgOH⁺' },
  MgCO3: { charge: 0, formula: 'MgCO₃' },
  'MgHCO3+': { charge: 1, formula: 'MgHCO₃⁺' },
  MgSO4: { charge: 0, formula: 'MgSO₄' },
  'MgPO4-': { charge: -1, formula: 'MgPO₄⁻' },
  MgHPO4: { charge: 0, formula: 'MgHPO₄' },
  'MgH2PO4+': { charge: 1, formula: 'MgH₂PO₄⁺' },
  'MgCit-': { charge: -1, formula: 'MgCit⁻' },
  MgHCit: { charge: 0, formula: 'MgHCit' },
  'MgAc+': { charge: 1, formula: 'MgAc⁺' },
  'KSO4-': { charge: -1, formula: 'KSO₄⁻' },
  'KHPO4-': { charge: -1, formula: 'KHPO₄⁻' },
  'NaCO3-': { charge: -1, formula: 'NaCO₃⁻' },
  NaHCO3: { charge: 0, formula: 'NaHCO₃' },
  'NaSO4-': { charge: -1, formula: 'NaSO₄⁻' },
  'NaHPO4-': { charge: -1, formula: 'NaHPO₄⁻' },
  'NH4SO4-': { charge: -1, formula: 'NH₄SO₄⁻' },
} as const satisfies Record<string, SpeciesRow>;

export type Species = keyof typeof species;

export const speciesKeys = Object.keys(species).filter(isSpecies);

export function isSpecies(key: string): key is Species {
  return Object.hasOwn(species, key);
}
