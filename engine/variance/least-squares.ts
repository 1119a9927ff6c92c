import { Matrix, QrDecomposition } from "ml-matrix";

export type Fit = {
  coefficients: number[];
  standardErrors: number[];
  residuals: number[];
  /** √(sum of squared residuals ÷ (rows − columns)); 0 when there are no rows to spare. */
  residualSd: number;
};

/**
 * Least squares by QR: the coefficients b for which the rows of `design` · b come closest to `values`.
 *
 * One column of ones and one of x give a straight line. Undefined where the columns do not tell the
 * coefficients apart. Throws RangeError for fewer rows than columns or rows without a value.
 */
export function leastSquares(design: readonly number[][], values: readonly number[]): Fit | undefined {
  const columns = design[0]?.length ?? 0;
  if (design.length !== values.length || design.length < columns || columns === 0) {
    throw new RangeError(
      `${design.length} rows, ${values.length} values and ${columns} columns make no fit.`,
    );
  }
  const matrix = new Matrix(design.map((row) => [...row]));
  const qr = new QrDecomposition(matrix);
  if (!isFullRank(matrix, qr.upperTriangularMatrix)) return undefined;
  const solution = qr.solve(Matrix.columnVector([...values]));
  const residuals = Matrix.sub(Matrix.columnVector([...values]), matrix.mmul(solution)).to1DArray();
  const degrees = design.length - columns;
  const squares = residuals.reduce((sum, residual) => sum + residual ** 2, 0);
  const residualSd = degrees > 0 ? Math.sqrt(squares / degrees) : 0;
  return {
    coefficients: solution.to1DArray(),
    standardErrors: inverseRowNorms(qr).map((norm) => norm * residualSd),
    residuals,
    residualSd,
  };
}

/** A column that is this small a part of itself beyond the columns before it says nothing new. */
const LEAST_SHARE = 1e-12;

function isFullRank(matrix: Matrix, triangle: Matrix): boolean {
  return Array.from({ length: matrix.columns }, (_, column) => column).every((column) => {
    const length = Math.hypot(...matrix.getColumn(column));
    return Math.abs(triangle.get(column, column)) > LEAST_SHARE * length;
  });
}

/** √ of the diagonal of (XᵀX)⁻¹ = R⁻¹R⁻ᵀ, from the triangle R alone, by which no digits are lost. */
function inverseRowNorms(qr: QrDecomposition): number[] {
  const triangle = qr.upperTriangularMatrix;
  const size = triangle.rows;
  const inverse = Matrix.zeros(size, size);
  for (let column = 0; column < size; column++) {
    for (let row = column; row >= 0; row--) {
      let rest = row === column ? 1 : 0;
      for (let k = row + 1; k <= column; k++) rest -= triangle.get(row, k) * inverse.get(k, column);
      inverse.set(row, column, rest / triangle.get(row, row));
    }
  }
  return Array.from({ length: size }, (_, row) => Math.hypot(...inverse.getRow(row)));
}
