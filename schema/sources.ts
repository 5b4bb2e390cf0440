// Every publication that a number in Tidemark rests on, by key. `common-practice` and `from-memory` are rows too, so that
// weak sources can be listed and counted.

interface SourceRow {
  /** Author or body, title, edition, and the table or page where it helps. */
  readonly title: string;
  readonly year?: number;
  /** How the data may be used, where the publisher says so. */
  readonly licence?: string;
  /** What we take from it. */
  readonly gives: string;
}

export const sources = {
  'common-practice': { title: 'Common practice in the trade', gives: 'rules of thumb, marked as such' },
  'from-memory': { title: 'From memory', gives: 'values not re-read in print' },
  'tidemark-design': { title: 'The grow recipe format, version 1', gives: 'what words and keys mean' },
  'yaml-1.2': { title: 'YAML Ain’t Markup Language, version 1.2.2', year: 2021, gives: 'the syntax of recipe files' },
  'kratky-2005': {
    title:
      'Kratky, B.A.: Growing lettuce in non-aerated, non-circulated hydroponic systems. Journal of Vegetable Science 11(2)',
    year: 2005,
    gives: 'volume and depth of a tank, and what was left of it at harvest',
  },
  'kratky-2009': {
    title: 'Kratky, B.A.: Three non-circulating hydroponic methods for growing lettuce. Acta Horticulturae 843:65-72',
    year: 2009,
    gives: 'bottle volume, immersion of the net pot, weeks to harvest',
  },
  'kratky-2010': {
    title:
      'Kratky, B.A.: A suspended net-pot, non-circulating hydroponic method for commercial production of leafy, romaine, and semi-head lettuce. University of Hawaii CTAHR, VC-1',
    year: 2010,
    gives: 'tank depth, immersion at transplanting, one fill for the crop',
  },
  'kratky-2005-tomato': {
    title:
      'Kratky, B.A., Maehira, G.T., Cupples, R.J., Bernabe, C.C.: Non-circulating hydroponic methods for growing tomatoes. Proc. Nat. Agric. Plastics Congr. 32:31-36',
    year: 2005,
    gives: '25 to 40 L of water for a kilogram of tomatoes; yield per plant',
  },
  'dwc-tomato-2021': {
    title: 'Water use of tomato in deep-water culture, drip and soil, table 2 (PubMed Central PMC7885021)',
    year: 2021,
    gives: 'season water use of a tomato plant in deep-water culture',
  },
  'ifas-without-soil': {
    title: 'University of Florida IFAS Extension: Grow your own vegetables without soil',
    gives: 'air space over static solution: about 1 in for young plants, 2 to 3 in as they grow',
  },
  'gavhane-2023': {
    title:
      'Gavhane, K.P. et al.: water use of lettuce in an indoor vertical system. Scientific Reports 13, doi 10.1038/s41598-023-36997-2',
    year: 2023,
    gives: '71 g of fresh lettuce a litre at a daily light integral of 11.5 mol/m2/d',
  },
  'langenfeld-2022': {
    title:
      'Langenfeld, N.J. et al.: Optimizing nitrogen and nutrient management in closed hydroponics. Sustainability 14:10204',
    year: 2022,
    gives: 'mass balance: what a plant takes up per litre = tissue concentration × dry mass per litre transpired',
  },
  'kratky-2011': {
    title:
      'Kratky, B.A.: Growing vegetable crops by non-circulating hydroponic methods. ASHS Annual Conference, abstract',
    year: 2011,
    gives: 'the level must not be raised over roots that hang in air',
  },
  'solid-geometry': {
    title: 'Volumes of cylinder, box, frustum and prismatoid (elementary geometry)',
    gives: 'volumes from measures',
  },
  'aapfco-labels': {
    title: 'AAPFCO: Statements of Uniform Interpretation and Policy (official 1993)',
    year: 1993,
    gives: 'what a fertilizer label states: total nitrogen, phosphate and potash as oxides, all others as the element',
  },
  'mattson-2018': {
    title: 'Mattson, N.: e-GRO Edible Alert 3(5)',
    year: 2018,
    gives: 'phosphorus and potassium from their oxides; worked doses of single salts',
  },
  'camberato-2023': {
    title: 'Camberato, J.: Converting liquid fertilizer analyses, Purdue University, 17 January 2023',
    year: 2023,
    gives: 'nutrient in a volume of a liquid feed from its analysis and density',
  },
  'texas-am-greenhouse': {
    title: 'Texas A&M AgriLife Extension: greenhouse nutrition',
    gives: 'parts per million from ounces in 100 gallons, by the factor 75',
  },
  'umass-greenhouse': {
    title: 'University of Massachusetts Extension: Fertilizer calculations for greenhouse crops',
    gives: 'ounces of a label for a wanted nitrogen',
  },
  'clp-annex-vi': {
    title: 'Regulation (EC) No 1272/2008 (CLP), Annex VI, table 3',
    year: 2008,
    gives: 'hazard statements of acids and bases by concentration',
  },
  si: {
    title: 'BIPM, The International System of Units (SI Brochure), 9th edition',
    year: 2019,
    gives: 'SI units, and the units accepted beside them',
  },
  'nist-sp-811': {
    title: 'NIST Special Publication 811, Guide for the Use of the International System of Units, Appendix B',
    year: 2008,
    licence: 'public domain (work of the US government)',
    gives: 'exact sizes of the imperial gallon and of the Fahrenheit degree',
  },
  'nist-hb44': {
    title: 'NIST Handbook 44, Specifications, Tolerances, and Other Technical Requirements, Appendix C',
    licence: 'public domain (work of the US government)',
    gives: 'exact sizes of US customary units',
  },
  'cfr-21-101-9': {
    title: '21 CFR 101.9(b)(5)(viii), household measures for labelling',
    licence: 'public domain (law of the US government)',
    gives: 'the teaspoon of 5 mL, the tablespoon of 15 mL and the cup of 240 mL',
  },
  'iupac-green-book': {
    title: 'IUPAC, Quantities, Units and Symbols in Physical Chemistry, 3rd edition, 2.13',
    year: 2007,
    gives: 'what pH is',
  },
  'ciaaw-2021': {
    title:
      'Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600',
    year: 2022,
    gives: 'atomic weights, abridged to five digits; conventional values where the standard is an interval',
  },
  'plummer-busenberg-1982': {
    title:
      'Plummer, L.N. and Busenberg, E.: The solubilities of calcite, aragonite and vaterite in CO2-H2O solutions between 0 and 90 °C. Geochimica et Cosmochimica Acta 46:1011-1040',
    year: 1982,
    gives: 'carbonate and water dissociation, Henry’s constant, calcium carbonate pairs, calcite, all with temperature',
  },
  'usgs-phreeqc-database': {
    title:
      'Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat',
    year: 2013,
    licence: 'public domain (U.S. Geological Survey)',
    gives:
      'ion pairs, phosphate, sulfate, borate and silicate constants with enthalpies, solubility products, diffusion of ion pairs',
  },
  'bates-phosphoric': {
    title:
      'Bates, R.G.: First dissociation constant of phosphoric acid from 0 to 60 °C. J. Res. NBS 47:127-134 (1951); Bates, R.G. and Acree, S.F.: pH of aqueous mixtures of potassium dihydrogen phosphate and disodium hydrogen phosphate at 0 to 60 °C. J. Res. NBS 34:373-394 (1945)',
    year: 1951,
    gives: 'first and second dissociation of phosphoric acid with temperature',
  },
  'emerson-1975': {
    title:
      'Emerson, K., Russo, R.C., Lund, R.E. and Thurston, R.V.: Aqueous ammonia equilibrium calculations: effect of pH and temperature. J. Fish. Res. Board Can. 32:2379-2383',
    year: 1975,
    gives: 'dissociation of ammonium with temperature',
  },
  'goldberg-2002': {
    title:
      'Goldberg, R.N., Kishore, N. and Lennen, R.M.: Thermodynamic quantities for the ionization reactions of buffers. J. Phys. Chem. Ref. Data 31:231-370',
    year: 2002,
    gives: 'citric, acetic and phthalic acid: dissociation and enthalpy (not re-read in print)',
  },
  'nist-46': {
    title: 'NIST Standard Reference Database 46: Critically Selected Stability Constants of Metal Complexes, version 8',
    year: 2004,
    gives: 'calcium and magnesium citrate (not re-read in print)',
  },
  'minteq-v4': {
    title: 'U.S. Environmental Protection Agency: MINTEQA2 version 4 thermodynamic database, after NIST SRD 46',
    year: 1999,
    licence: 'public domain (U.S. EPA)',
    gives: 'solubility of brushite and struvite, calcium and magnesium citrate',
  },
  'ohlinger-1998': {
    title:
      'Ohlinger, K.N., Young, T.M. and Schroeder, E.D.: Predicting struvite formation in digestion. Water Research 32:3607-3614',
    year: 1998,
    gives: 'solubility product of struvite at 25 °C (not re-read in print)',
  },
  'noaa-co2': {
    title: 'NOAA Global Monitoring Laboratory: Trends in atmospheric carbon dioxide, global annual mean',
    year: 2023,
    gives: 'carbon dioxide in outdoor air, about 420 ppm',
  },
  'davies-1962': {
    title: 'Davies, C.W.: Ion Association. Butterworths, London',
    year: 1962,
    gives: 'activity coefficients up to an ionic strength of about 0.5 mol/kg',
  },
  'malmberg-maryott-1956': {
    title: 'Malmberg, C.G. and Maryott, A.A.: Dielectric constant of water from 0 to 100 °C. J. Res. NBS 56:1-8',
    year: 1956,
    gives: 'dielectric constant of water with temperature',
  },
  'kell-1975': {
    title:
      'Kell, G.S.: Density, thermal expansivity, and compressibility of liquid water from 0 to 150 °C. J. Chem. Eng. Data 20:97-105',
    year: 1975,
    gives: 'density of water with temperature',
  },
  'iapws-viscosity': {
    title:
      'IAPWS R12-08: Formulation 2008 for the viscosity of ordinary water substance; correlation at 0.1 MPa (Pátek et al. 2009)',
    year: 2008,
    gives: 'viscosity of water with temperature',
  },
  'robinson-stokes-1959': {
    title: 'Robinson, R.A. and Stokes, R.H.: Electrolyte Solutions, 2nd edition. Butterworths, London',
    year: 1959,
    gives: 'the Debye-Hückel-Onsager law of conductivity with its constants',
  },
  'crc-ionic-conductivity': {
    title: 'Vanýsek, P.: Ionic conductivity and diffusion at infinite dilution. CRC Handbook of Chemistry and Physics',
    gives: 'limiting ionic conductivities at 25 °C',
  },
  'standard-methods-1030': {
    title: 'Standard Methods for the Examination of Water and Wastewater, 1030 E: Checking analyses’ correctness',
    gives: 'anion-cation balance of a water analysis',
  },
  'standard-methods-2320': {
    title: 'Standard Methods for the Examination of Water and Wastewater, 2320: Alkalinity',
    gives: 'alkalinity as the acid needed to about pH 4.5',
  },
  'bailey-1998': {
    title: 'Bailey, D.A.: Alkalinity control for irrigation water used in greenhouses. North Carolina State University',
    year: 1998,
    gives: 'one milliequivalent of alkalinity as calcium carbonate',
  },
} as const satisfies Record<string, SourceRow>;

export type SourceKey = keyof typeof sources;
