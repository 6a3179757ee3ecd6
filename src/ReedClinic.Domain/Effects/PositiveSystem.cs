namespace ReedClinic.Domain.Effects;

/// <summary>A symmetric, positive definite system of equations, taken apart once (Cholesky) and then solved as often as needed.</summary>
/// <remarks>The ordinary row-by-row factorisation, as in G. H. Golub and C. F. Van Loan, Matrix Computations, section 4.2.</remarks>
internal sealed class PositiveSystem
{
    private readonly double[,] lower;
    private readonly int size;

    /// <summary>Takes the system apart.</summary>
    /// <param name="matrix">The matrix; only its lower half is read.</param>
    /// <exception cref="ArgumentException">The matrix isn’t positive definite: nothing bears on one of the unknowns.</exception>
    public PositiveSystem(double[,] matrix)
    {
        size = matrix.GetLength(0);
        lower = new double[size, size];
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column <= row; column++)
            {
                var rest = matrix[row, column];
                for (var at = 0; at < column; at++)
                {
                    rest -= lower[row, at] * lower[column, at];
                }

                if (row == column && !(rest > 0))
                {
                    throw new ArgumentException("Nothing bears on one of the unknowns.", nameof(matrix));
                }

                lower[row, column] = row == column ? Math.Sqrt(rest) : rest / lower[column, column];
            }
        }
    }

    /// <summary>The logarithm of the determinant.</summary>
    public double LogDeterminant => 2 * Enumerable.Range(0, size).Sum(at => Math.Log(lower[at, at]));

    /// <summary>The unknowns for one right-hand side.</summary>
    public double[] Solve(double[] right)
    {
        var found = (double[])right.Clone();
        for (var row = 0; row < size; row++)
        {
            for (var at = 0; at < row; at++)
            {
                found[row] -= lower[row, at] * found[at];
            }

            found[row] /= lower[row, row];
        }

        for (var row = size - 1; row >= 0; row--)
        {
            for (var at = row + 1; at < size; at++)
            {
                found[row] -= lower[at, row] * found[at];
            }

            found[row] /= lower[row, row];
        }

        return found;
    }

    /// <summary>The inverse, column by column.</summary>
    public double[][] Inverse() => [.. Enumerable.Range(0, size).Select(at =>
    {
        var unit = new double[size];
        unit[at] = 1;
        return Solve(unit);
    })];
}
