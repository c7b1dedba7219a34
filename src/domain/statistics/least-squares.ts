/** One observation: what is explained, and what explains it. */
export interface Row {
  readonly y: number;
  readonly x: readonly number[];
}

export interface LeastSquares {
  /** One for each column of `x`; a constant is a column of ones. */
  readonly coefficients: readonly number[];
  /** Sum of the squared residuals. */
  readonly residualSquares: number;
  /** Rows less columns. */
  readonly freedom: number;
  /** Inverse of XᵀX: times the residual variance it is the coefficients' covariance. */
  readonly inverse: readonly (readonly number[])[];
}

/**
 * Coefficients with the least sum of squared residuals, by Householder reflections: forming XᵀX first would lose half of
 * the digits. What is believed beforehand can be given as rows of its own, each divided by its standard deviation like
 * the observations (Gelman et al., Bayesian Data Analysis, 3rd ed., 14.8).
 * @param rows at least as many as columns, all of the same length
 * @returns undefined when the columns do not tell the coefficients apart
 */
export function leastSquares(rows: readonly Row[]): LeastSquares | undefined {
  const columns = rows[0]?.x.length ?? 0;
  if (columns === 0 || rows.length < columns) return undefined;
  // The last column is y: what reflections do to it, they do to the right-hand side.
  const table = rows.map(({ x, y }) => Float64Array.of(...x, y));
  const sizes = Array.from({ length: columns }, (_, j) => norm(table, j, 0));
  for (let j = 0; j < columns; j++) {
    const size = norm(table, j, j);
    if (!(size > 1e-12 * (sizes[j] ?? 0))) return undefined;
    reflect(table, j, at(table, j, j) > 0 ? -size : size);
  }
  const inverseR = invertUpper(table, columns);
  const coefficients = inverseR.map((row) => row.reduce((sum, value, j) => sum + value * at(table, j, columns), 0));
  const inverse = inverseR.map((one) => inverseR.map((other) => dot(one, other)));
  return {
    coefficients,
    residualSquares: norm(table, columns, columns) ** 2,
    freedom: rows.length - columns,
    inverse,
  };
}

const at = (table: readonly Float64Array[], i: number, j: number): number => table[i]?.[j] ?? 0;
const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, i) => sum + value * (other[i] ?? 0), 0);

/** Length of column `j` from row `from` down. */
function norm(table: readonly Float64Array[], j: number, from: number): number {
  let squares = 0;
  for (let i = from; i < table.length; i++) squares += at(table, i, j) ** 2;
  return Math.sqrt(squares);
}

/** Turns column `j` from row `j` down into (target, 0, 0, …), and the columns after it along with it. */
function reflect(table: readonly Float64Array[], j: number, target: number): void {
  const mirror = table.map((row, i) => (i < j ? 0 : (row[j] ?? 0) - (i === j ? target : 0)));
  const half = dot(mirror, mirror) / 2;
  const width = table[0]?.length ?? 0;
  for (let column = j; column < width; column++) {
    let along = 0;
    for (let i = j; i < table.length; i++) along += (mirror[i] ?? 0) * at(table, i, column);
    table.forEach((row, i) => {
      if (i >= j) row[column] = (row[column] ?? 0) - ((mirror[i] ?? 0) * along) / half;
    });
  }
}

/** Inverse of the upper triangle that the reflections leave. */
function invertUpper(table: readonly Float64Array[], size: number): number[][] {
  const inverse = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j++) {
    for (let i = j; i >= 0; i--) {
      let value = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) value -= at(table, i, k) * (inverse[k]?.[j] ?? 0);
      const row = inverse[i];
      if (row) row[j] = value / at(table, i, i);
    }
  }
  return inverse;
}
