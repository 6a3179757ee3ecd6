namespace ReedClinic.Domain.Effects;

/// <summary>One observation.</summary>
/// <param name="Common">What bears on it of what is the same for everybody.</param>
/// <param name="Group">Which student; −1 for none.</param>
/// <param name="Own">What bears on it of that student’s own.</param>
/// <param name="Value">What was seen.</param>
internal sealed record RegressionRow(double[] Common, int Group, double[] Own, double Value);

/// <summary>What is thought before anything is seen.</summary>
/// <param name="Mean">Of each common unknown.</param>
/// <param name="Precision">Of each common unknown: one over its variance; 0 for a flat prior.</param>
/// <param name="OwnPrecision">For each student, of each of their own unknowns; those lie round 0.</param>
/// <param name="Tails">Degrees of freedom of the scatter: a small number for long tails, infinity for a normal scatter.</param>
/// <param name="Scale">The scatter that is expected.</param>
/// <param name="ScaleWorth">As many observations’ worth of that; 0 for a flat prior on its logarithm.</param>
internal sealed record RegressionPrior(
    double[] Mean, double[] Precision, IReadOnlyList<double[]> OwnPrecision, double Tails, double Scale, double ScaleWorth);

/// <summary>What is thought afterwards.</summary>
/// <param name="Middle">Of each common unknown.</param>
/// <param name="Spread">Their covariances.</param>
/// <param name="Scale">The scatter.</param>
/// <param name="Freedom">Degrees of freedom of the posterior, since the scatter isn’t known but estimated.</param>
/// <param name="LogEvidence">How well the whole explains what was seen, up to a constant (Laplace).</param>
internal sealed record RegressionFit(double[] Middle, double[][] Spread, double Scale, double Freedom, double LogEvidence);

/// <summary>
/// Bayesian linear regression with normal priors, students’ own deviations drawn together, and a scatter with long tails, so that one
/// mistyped pitch moves nothing.
/// </summary>
/// <remarks>
/// Student-t scatter by EM: K. L. Lange, R. J. A. Little and J. M. G. Taylor (1989), "Robust statistical modeling using the t
/// distribution", J. American Statistical Association 84, 881–896: each observation gets the weight (ν + 1)/(ν + r²/σ²), and the
/// covariance is that of the expected information, (ν + 1)/(ν + 3) of the normal one. Each round solves for a correction, not for the
/// unknowns themselves, which takes out what rounding put in. The students’ own unknowns are eliminated one student at a time, so
/// that work grows with the number of students and not with its cube.
/// </remarks>
internal sealed class PooledRegression
{
    private const int MostRounds = 200;
    private const double Settled = 1e-7;

    private readonly IReadOnlyList<RegressionRow> rows;
    private readonly RegressionPrior prior;
    private readonly double[] common;
    private readonly double[][] own;
    private readonly double[] residuals;
    private double scale;

    private PooledRegression(IReadOnlyList<RegressionRow> rows, RegressionPrior prior)
    {
        (this.rows, this.prior) = (rows, prior);
        common = (double[])prior.Mean.Clone();
        own = [.. prior.OwnPrecision.Select(precision => new double[precision.Length])];
        residuals = new double[rows.Count];
        scale = prior.Scale;
    }

    /// <summary>Fits the model.</summary>
    /// <param name="rows">What was seen.</param>
    /// <param name="prior">What was thought before.</param>
    /// <returns>What is thought afterwards.</returns>
    public static RegressionFit Fit(IReadOnlyList<RegressionRow> rows, RegressionPrior prior) => new PooledRegression(rows, prior).Run();

    private RegressionFit Run()
    {
        TakeResiduals();
        for (var round = 0; round < MostRounds; round++)
        {
            var weights = Weights();
            var normal = new Normal(this, weights, scale);
            var moved = normal.Correct(weights);
            TakeResiduals();
            var before = scale;
            scale = NewScale(weights, normal.TakenUp());
            if (moved < Settled && Math.Abs(scale - before) <= Settled * scale)
            {
                break;
            }
        }

        var information = double.IsInfinity(prior.Tails) ? 1 : (prior.Tails + 1) / (prior.Tails + 3);
        var known = new Normal(this, [.. rows.Select(_ => information)], scale);
        var ofScale = double.IsInfinity(prior.Tails) ? 1 : prior.Tails / (prior.Tails + 3);
        var freedom = Math.Max(1, ((rows.Count - known.TakenUp()) * ofScale) + prior.ScaleWorth);
        return new RegressionFit(common, known.Inverse(), scale, freedom, LogJoint() - (known.LogDeterminant / 2));
    }

    private void TakeResiduals()
    {
        for (var at = 0; at < rows.Count; at++)
        {
            residuals[at] = rows[at].Value - Dot(rows[at].Common, common) - (rows[at].Group < 0 ? 0 : Dot(rows[at].Own, own[rows[at].Group]));
        }
    }

    private double[] Weights() =>
        [.. residuals.Select(off => double.IsInfinity(prior.Tails) ? 1 : (prior.Tails + 1) / (prior.Tails + (off * off / (scale * scale))))];

    private double NewScale(double[] weights, double takenUp)
    {
        var squares = residuals.Zip(weights, (off, weight) => weight * off * off).Sum() + (prior.ScaleWorth * prior.Scale * prior.Scale);
        var behind = Math.Max(rows.Count - takenUp, 0) + prior.ScaleWorth;
        return behind > 0 && squares > 0 ? Math.Sqrt(squares / behind) : scale;
    }

    private double LogJoint()
    {
        var tails = prior.Tails;
        var likelihood = residuals.Sum(off => double.IsInfinity(tails)
            ? -off * off / (2 * scale * scale)
            : -(tails + 1) / 2 * Math.Log(1 + (off * off / (tails * scale * scale)))) - (rows.Count * Math.Log(scale));
        var ofScale = -prior.ScaleWorth * (Math.Log(scale) + (prior.Scale * prior.Scale / (2 * scale * scale)));
        return likelihood + ofScale + LogPrior(common, prior.Mean, prior.Precision)
            + own.Select((mine, student) => LogPrior(mine, new double[mine.Length], prior.OwnPrecision[student])).Sum();
    }

    private static double LogPrior(double[] at, double[] mean, double[] precision) => at
        .Select((value, place) => precision[place] > 0
            ? (Math.Log(precision[place]) - (precision[place] * (value - mean[place]) * (value - mean[place]))) / 2 : 0)
        .Sum();

    private static double Dot(double[] one, double[] other)
    {
        var sum = 0.0;
        for (var at = 0; at < one.Length; at++)
        {
            sum += one[at] * other[at];
        }

        return sum;
    }

    /// <summary>The normal equations for given weights, with each student’s own unknowns eliminated.</summary>
    private sealed class Normal
    {
        private readonly PooledRegression of;
        private readonly PositiveSystem[] blocks;
        private readonly double[][][] through;
        private readonly PositiveSystem reduced;
        private readonly double perSquare;

        public Normal(PooledRegression of, double[] weights, double scale)
        {
            (this.of, perSquare) = (of, 1 / (scale * scale));
            var size = of.common.Length;
            var centre = Diagonal(of.prior.Precision);
            var mine = of.prior.OwnPrecision.Select(Diagonal).ToArray();
            double[][,] across = [.. of.prior.OwnPrecision.Select(precision => new double[size, precision.Length])];
            for (var at = 0; at < of.rows.Count; at++)
            {
                var (row, weight) = (of.rows[at], weights[at] * perSquare);
                Add(centre, row.Common, row.Common, weight);
                if (row.Group >= 0)
                {
                    Add(mine[row.Group], row.Own, row.Own, weight);
                    Add(across[row.Group], row.Common, row.Own, weight);
                }
            }

            blocks = [.. mine.Select(block => new PositiveSystem(block))];
            through = [.. blocks.Select((block, student) => Enumerable.Range(0, size).Select(at => block.Solve(RowOf(across[student], at))).ToArray())];
            for (var student = 0; student < blocks.Length; student++)
            {
                Eliminate(centre, across[student], through[student]);
            }

            reduced = new PositiveSystem(centre);
        }

        public double LogDeterminant => reduced.LogDeterminant + blocks.Sum(block => block.LogDeterminant);

        public double[][] Inverse() => reduced.Inverse();

        /// <summary>How many unknowns the observations have determined: all, less what the priors hold.</summary>
        public double TakenUp()
        {
            var inverse = reduced.Inverse();
            var taken = of.common.Length - of.prior.Precision.Select((precision, at) => precision * inverse[at][at]).Sum();
            for (var student = 0; student < blocks.Length; student++)
            {
                var alone = blocks[student].Inverse();
                for (var at = 0; at < alone.Length; at++)
                {
                    var column = Enumerable.Range(0, inverse.Length).Select(common => through[student][common][at]).ToArray();
                    var more = column.Select((weight, common) => weight * Dot(inverse[common], column)).Sum();
                    taken += 1 - (of.prior.OwnPrecision[student][at] * (alone[at][at] + more));
                }
            }

            return taken;
        }

        /// <summary>Moves the unknowns to where they solve the equations; gives how far, in units of the scatter.</summary>
        public double Correct(double[] weights)
        {
            var centre = of.common.Select((value, at) => of.prior.Precision[at] * (of.prior.Mean[at] - value)).ToArray();
            var mine = of.own.Select((values, student) => values.Select((value, at) => -of.prior.OwnPrecision[student][at] * value).ToArray()).ToArray();
            for (var at = 0; at < of.rows.Count; at++)
            {
                var (row, pull) = (of.rows[at], weights[at] * of.residuals[at] * perSquare);
                Add(centre, row.Common, pull);
                if (row.Group >= 0)
                {
                    Add(mine[row.Group], row.Own, pull);
                }
            }

            for (var student = 0; student < blocks.Length; student++)
            {
                for (var at = 0; at < centre.Length; at++)
                {
                    centre[at] -= Dot(through[student][at], mine[student]);
                }
            }

            var step = reduced.Solve(centre);
            Add(of.common, step, 1);
            for (var student = 0; student < blocks.Length; student++)
            {
                var alone = blocks[student].Solve(mine[student]);
                for (var at = 0; at < step.Length; at++)
                {
                    Add(alone, through[student][at], -step[at]);
                }

                Add(of.own[student], alone, 1);
            }

            return step.Max(Math.Abs) / of.scale;
        }

        private static void Eliminate(double[,] centre, double[,] across, double[][] through)
        {
            for (var at = 0; at < through.Length; at++)
            {
                var row = RowOf(across, at);
                for (var other = 0; other <= at; other++)
                {
                    centre[at, other] -= Dot(row, through[other]);
                }
            }
        }

        private static double[,] Diagonal(double[] values)
        {
            var matrix = new double[values.Length, values.Length];
            for (var at = 0; at < values.Length; at++)
            {
                matrix[at, at] = values[at];
            }

            return matrix;
        }

        private static double[] RowOf(double[,] matrix, int row)
        {
            var values = new double[matrix.GetLength(1)];
            for (var column = 0; column < values.Length; column++)
            {
                values[column] = matrix[row, column];
            }

            return values;
        }

        private static void Add(double[] to, double[] what, double times)
        {
            for (var at = 0; at < to.Length; at++)
            {
                to[at] += what[at] * times;
            }
        }

        private static void Add(double[,] to, double[] one, double[] other, double times)
        {
            for (var row = 0; row < one.Length; row++)
            {
                for (var column = 0; one[row] is not 0 && column < other.Length; column++)
                {
                    to[row, column] += one[row] * other[column] * times;
                }
            }
        }
    }
}
