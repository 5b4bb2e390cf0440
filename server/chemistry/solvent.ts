// Water itself: density, dielectric constant and viscosity with temperature. Separate because activity and conductivity
// both rest on them.

export interface Solvent {
  readonly temperature_K: number;
  readonly density_kg_per_L: number;
  readonly dielectric: number;
  /** Pa s. */
  readonly viscosity: number;
}

/** Pure water at atmospheric pressure, 0 to 100 °C. */
export function solventAt(temperature_C: number): Solvent {
  return {
    temperature_K: temperature_C + 273.15,
    density_kg_per_L: densityAt(temperature_C),
    dielectric: dielectricAt(temperature_C),
    viscosity: viscosityAt(temperature_C),
  };
}

/** Kell 1975, equation 1: kg/L. */
function densityAt(t: number): number {
  const above =
    999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return above / (1 + 16.87985e-3 * t) / 1000;
}

/** Malmberg and Maryott 1956. */
function dielectricAt(t: number): number {
  return 87.74 + t * (-0.40008 + t * (9.398e-4 - t * 1.41e-6));
}

/** IAPWS correlation at 0.1 MPa: Pa s. */
function viscosityAt(t: number): number {
  const reduced = (t + 273.15) / 300;
  return (
    1e-6 * (280.68 * reduced ** -1.9 + 511.45 * reduced ** -7.7 + 61.131 * reduced ** -19.6 + 0.45903 * reduced ** -40)
  );
}
